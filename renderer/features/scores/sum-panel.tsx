import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { points, SCORES } from '../../text/english/scores.ts';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { describePupil, getPupilName } from './describe-pupil.ts';
import type { Selected } from './selection.ts';
import { explainPupil, explainSquad } from './sum-lines.ts';

/** Where each point of the chosen line came from. */
export function SumPanel({
  lesson,
  selected,
  names,
  onAdjust,
}: {
  readonly lesson: LessonView;
  readonly selected: Selected | null;
  readonly names: LessonNames;
  readonly onAdjust: () => void;
}) {
  if (!selected) {
    return (
      <Sheet label={SCORES.sum} className="sum-panel">
        <p className="pen">{SCORES.sumEmpty}</p>
      </Sheet>
    );
  }
  const isPupil = selected.kind === 'pupil';
  const score = isPupil ? selected.score : selected.row.score;
  const name = isPupil ? getPupilName(selected.score) : names.squad(selected.row.squad);
  const lines = isPupil
    ? explainPupil(lesson.plan, selected.score)
    : explainSquad(lesson.plan, selected.row.score);
  const isInked = isPupil ? selected.score.state === 'confirmed' : selected.row.isInked;
  const amount = score.sum ? SCORES.sumOf(score.sum.points, score.sum.max) : SCORES.none;
  return (
    <Sheet label={SCORES.sumTitle(amount, name)} className="sum-panel">
      <h2 id="sum" tabIndex={-1}>
        <span className={score.sum && !isInked ? 'pencilled' : ''}>{amount}</span>
        {SCORES.sumOfWhom(name)}
      </h2>
      {isPupil && !score.sum && <p className="read">{describePupil(selected.score).join('; ')}</p>}
      {score.sum && (
        <table className="print">
          <tbody>
            {lines.map(({ key, words, points: given, instead, isPencilled }) => (
              <tr key={key}>
                <td>
                  {words} {isPencilled && <em className="pen">{SCORES.pencilled}</em>}
                </td>
                <td className="r">{instead ?? (given === null ? '' : points(given))}</td>
              </tr>
            ))}
            <tr>
              <td>{SCORES.sum}</td>
              <td className={`r whole ${isInked ? '' : 'pencilled'}`}>
                {amount}
                {score.percent !== null && `, ${SCORES.percentOf(score.percent)}`}
              </td>
            </tr>
          </tbody>
        </table>
      )}
      <Button keyId="adjust" onPress={onAdjust}>
        {SCORES.adjust}
      </Button>
    </Sheet>
  );
}
