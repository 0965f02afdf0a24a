import type { Plan } from '../../../src-core/lesson/plan.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { SquadMark } from '../../../src-core/marking/squad-score.ts';
import { points, SCORES } from '../../text/english/scores.ts';

/** Above this a squad criterion is typed instead of chosen. */
const MOST_CHOICES = 20;

/** A squad criterion's points: chosen from 0 up; nothing is proposed, so it stands empty until it is given. */
export function SquadPoints({
  mark,
  squad,
  name,
  plan,
  onDecide,
}: {
  readonly mark: SquadMark;
  readonly squad: string;
  readonly name: string;
  readonly plan: Plan;
  readonly onDecide: (act: JournalAct) => void;
}) {
  const { criterion, decided, max } = mark;
  const label = plan.rubric.squad.find(({ code }) => code === criterion)?.label ?? criterion;
  const decide = (value: string) =>
    onDecide({
      kind: 'squad-marked',
      squad,
      criterion,
      points: value === '' ? null : Math.min(max, Math.max(0, Number(value))),
    });
  const known = {
    'aria-label': SCORES.give(label, name),
    className: decided === null ? 'give open' : 'give',
  };
  if (!Number.isInteger(max) || max > MOST_CHOICES) {
    return (
      <input
        {...known}
        type="number"
        min={0}
        max={max}
        step="any"
        defaultValue={decided ?? ''}
        onBlur={({ currentTarget }) => decide(currentTarget.value)}
      />
    );
  }
  return (
    <select {...known} value={decided ?? ''} onChange={({ currentTarget }) => decide(currentTarget.value)}>
      <option value="">{SCORES.notGiven}</option>
      {Array.from({ length: max + 1 }, (_, amount) => amount).map((amount) => (
        <option key={amount} value={amount}>
          {points(amount)}
        </option>
      ))}
      {decided !== null && !Number.isInteger(decided) && <option value={decided}>{points(decided)}</option>}
    </select>
  );
}
