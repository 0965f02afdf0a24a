import type { Plan } from '../../../src-core/lesson/plan.ts';
import { PLAN } from '../../text/english/plan-step.ts';
import { Sheet } from '../../ui/sheet.tsx';

/** What a clip and a squad are marked on. */
export function RubricList({ plan }: { readonly plan: Plan }) {
  const { clip, squad, award } = plan.rubric;
  return (
    <Sheet label={PLAN.rubric} className="says-sheet">
      <header className="strip-head">
        <h2>{PLAN.rubric}</h2>
      </header>
      <dl className="kv">
        {clip.map(({ code, label, points }) => (
          <div key={code}>
            <dt>{label}</dt>
            <dd>{award.rule === 'sum' ? PLAN.points(points) : PLAN.needed}</dd>
          </div>
        ))}
        {squad.map(({ code, label, maxPoints }) => (
          <div key={code}>
            <dt>{PLAN.perSquad(label)}</dt>
            <dd>{PLAN.upTo(maxPoints)}</dd>
          </div>
        ))}
      </dl>
    </Sheet>
  );
}
