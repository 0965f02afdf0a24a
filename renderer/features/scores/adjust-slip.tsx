import { useState } from 'react';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import { SCORES } from '../../text/english/scores.ts';
import { Button } from '../../ui/button.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import {
  type AdjustmentForm,
  buildForm,
  fillOverride,
  getOverride,
  listDecisions,
  listMissing,
  takeBack,
} from './adjustment.ts';
import { AttendanceFields } from './attendance-fields.tsx';
import type { Selected } from './selection.ts';

/** Attendance and points by hand for the chosen line; points always with a reason. */
export function AdjustSlip({
  selected,
  name,
  onDecide,
  onClose,
}: {
  readonly selected: Selected;
  readonly name: string;
  readonly onDecide: (acts: readonly JournalAct[]) => void;
  readonly onClose: () => void;
}) {
  const [form, setForm] = useState<AdjustmentForm>(() => buildForm(selected));
  const change = (part: Partial<AdjustmentForm>) => setForm((now) => ({ ...now, ...part }));
  const missing = listMissing(form);
  const override = getOverride(selected, form.of);
  const finish = (acts: readonly JournalAct[]) => {
    onDecide(acts);
    onClose();
  };
  return (
    <SlipDialog title={SCORES.adjustTitle(name)} onClose={onClose}>
      <form
        className="adjust"
        onSubmit={(event) => {
          event.preventDefault();
          if (missing.length === 0) finish(listDecisions(selected, form));
        }}
      >
        {selected.kind === 'pupil' && <AttendanceFields form={form} onChange={change} />}
        <PointsFields {...{ selected, form, missing }} onChange={change} />
        <div className="rem">
          <button type="submit" className="btn ink" disabled={missing.length > 0}>
            {SCORES.save}
          </button>
          {override && (
            <Button onPress={() => finish([takeBack(selected, form.of, SCORES.backReason)])}>
              {SCORES.takeBack}
            </Button>
          )}
        </div>
      </form>
    </SlipDialog>
  );
}

function PointsFields({
  selected,
  form,
  missing,
  onChange,
}: {
  readonly selected: Selected;
  readonly form: AdjustmentForm;
  readonly missing: readonly string[];
  readonly onChange: (part: Partial<AdjustmentForm>) => void;
}) {
  const clips = selected.kind === 'squad' ? selected.row.boxes.filter(({ clip }) => clip !== null) : [];
  return (
    <fieldset>
      <legend>{SCORES.pointsHead}</legend>
      {selected.kind === 'squad' && (
        <label>
          {SCORES.what}
          <select
            value={form.of}
            onChange={({ currentTarget: { value } }) =>
              onChange({ of: value, ...fillOverride(getOverride(selected, value)) })
            }
          >
            <option value="sum">{SCORES.whole}</option>
            {clips.map(({ clip, station }) => (
              <option key={clip} value={clip ?? ''}>
                {SCORES.clipOf(station)}
              </option>
            ))}
          </select>
        </label>
      )}
      <span className="pair">
        {(['by', 'to'] as const).map((type) => (
          <label key={type} className="check">
            <input
              type="radio"
              name="type"
              checked={form.type === type}
              onChange={() => onChange({ type })}
            />
            {SCORES[type]}
          </label>
        ))}
      </span>
      <label>
        {SCORES.amount}
        <input
          inputMode="decimal"
          value={form.amount}
          aria-invalid={missing.includes('amount')}
          onChange={({ currentTarget }) => onChange({ amount: currentTarget.value })}
        />
      </label>
      <label>
        {SCORES.reason}
        <input
          value={form.reason}
          maxLength={500}
          required={form.amount !== ''}
          aria-describedby="reason-hint"
          onChange={({ currentTarget }) => onChange({ reason: currentTarget.value })}
        />
      </label>
      <p id="reason-hint" className="cap">
        {SCORES.reasonHint}
      </p>
    </fieldset>
  );
}
