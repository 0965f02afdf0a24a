import { SCORES } from '../../text/english/scores.ts';
import type { AdjustmentForm } from './adjustment.ts';

const CHOICES = ['present', 'late', 'absent', 'excused'] as const;

/** Whether a pupil was there, and since when for a late one. */
export function AttendanceFields({
  form,
  onChange,
}: {
  readonly form: AdjustmentForm;
  readonly onChange: (part: Partial<AdjustmentForm>) => void;
}) {
  return (
    <fieldset>
      <legend>{SCORES.attendanceHead}</legend>
      <span className="pair">
        {CHOICES.map((attendance) => (
          <label key={attendance} className="check">
            <input
              type="radio"
              name="attendance"
              checked={form.attendance === attendance}
              onChange={() => onChange({ attendance })}
            />
            {SCORES.attendance[attendance]}
          </label>
        ))}
      </span>
      {form.attendance === 'late' && (
        <label>
          {SCORES.arrived}
          <input
            value={form.arrived}
            placeholder={SCORES.arrivedHint}
            onChange={({ currentTarget }) => onChange({ arrived: currentTarget.value })}
          />
        </label>
      )}
    </fieldset>
  );
}
