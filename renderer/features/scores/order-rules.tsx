import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { OrderRule } from '../../../src-core/lesson/plan.ts';
import { ORDER_RULES } from '../../../src-core/marking/order-rule.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { points, RULE_WORDS, SCORES } from '../../text/english/scores.ts';
import { Sheet } from '../../ui/sheet.tsx';
import { listBroken, type SquadRow } from './score-table.ts';

/** The four order rules side by side, for the squads that they change. */
export function OrderRules({
  lesson,
  rows,
  names,
  onChoose,
}: {
  readonly lesson: LessonView;
  readonly rows: readonly SquadRow[];
  readonly names: LessonNames;
  readonly onChoose: (rule: OrderRule) => void;
}) {
  const broken = listBroken(rows);
  const squads = broken.map(({ squad }) => names.squad(squad));
  return (
    <Sheet label={SCORES.rules} className="rules">
      <h2>{SCORES.rules}</h2>
      <div className="rl" role="radiogroup" aria-label={SCORES.rules}>
        {ORDER_RULES.map((rule) => (
          <label key={rule}>
            <input
              type="radio"
              name="order-rule"
              checked={lesson.plan.orderRule === rule}
              onChange={() => onChoose(rule)}
            />
            <span>
              <b>{RULE_WORDS[rule].name}</b>
              <small>{RULE_WORDS[rule].means}</small>
            </span>
            <span className="vs">
              {broken.map((row) => (
                <span key={row.squad} className={`v ${row.areClipsInked ? '' : 'pencilled'}`}>
                  {broken.length > 1 && <small className="who">{names.squad(row.squad)} </small>}
                  {points(row.score.byRule[rule].clipPoints)}
                  <small>{SCORES.of(row.clipMax)}</small>
                </span>
              ))}
            </span>
          </label>
        ))}
      </div>
      <p className="cap">
        {SCORES.ruleShown(squads, rows.length - broken.length)} {SCORES.ruleChanges}
      </p>
    </Sheet>
  );
}
