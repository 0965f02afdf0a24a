import type { Plan } from '../../../src-core/lesson/plan.ts';
import { PLAN } from '../../text/english/plan-step.ts';
import { Plate } from '../../ui/marks.tsx';
import { Sheet } from '../../ui/sheet.tsx';

/** The stations: letter, place with its clue, exercise with its counting rule, reps, caution. */
export function StationTable({ plan }: { readonly plan: Plan }) {
  return (
    <Sheet label={PLAN.stations} className="st">
      <header className="strip-head">
        <h2>{PLAN.stations}</h2>
        <span className="cap">{PLAN.stationsSentence(plan.stations.length)}</span>
      </header>
      <table className="print stt">
        <thead>
          <tr>
            <td />
            <th scope="col">{PLAN.place}</th>
            <th scope="col">{PLAN.exercise}</th>
            <th scope="col" className="r">
              {PLAN.reps}
            </th>
            <th scope="col">{PLAN.care}</th>
          </tr>
        </thead>
        <tbody>
          {plan.stations.map(
            ({ code, place, clue, exercise, counting, cycleSeconds, reps, caution = '' }) => (
              <tr key={code}>
                <td>
                  <Plate letter={code} />
                </td>
                <th scope="row">
                  <b>{place}</b>
                  {clue && <small>{clue}</small>}
                </th>
                <td>
                  <b>{exercise}</b>
                  <small className="how">
                    {PLAN.counting[counting]}
                    {cycleSeconds && `, ${PLAN.tempo(...cycleSeconds)}`}
                  </small>
                </td>
                <td className="r n">{reps}</td>
                <td>
                  <small className="how">{caution}</small>
                </td>
              </tr>
            ),
          )}
        </tbody>
      </table>
    </Sheet>
  );
}
