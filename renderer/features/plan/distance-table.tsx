import { findMetres } from '../../../src-core/lesson/lesson-timing.ts';
import type { Plan } from '../../../src-core/lesson/plan.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';
import type { PlanEdit } from './plan-edit.ts';
import { RANGES } from './plan-edits.ts';
import { changeDistance } from './route-edits.ts';
import { listRowKeys } from './row-keys.ts';
import { TypedWord } from './typed-word.tsx';

/** Distances between stations in metres, each pair once: the table is half a square. */
export function DistanceTable({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (edit: PlanEdit) => void;
}) {
  const codes = plan.stations.map(({ code }) => code);
  if (codes.length < 2) return null;
  const keys = listRowKeys(codes);
  return (
    <div className="rot-scroll">
      <table className="distances">
        <caption className="cap">{ROUTES.distances}</caption>
        <thead>
          <tr>
            <td />
            {codes.slice(0, -1).map((code, column) => (
              <th key={keys[column]} scope="col">
                {code}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {codes.slice(1).map((one, row) => (
            <tr key={keys[row + 1]}>
              <th scope="row">{one}</th>
              {codes.slice(0, row + 1).map((other, column) => {
                const metres = findMetres(plan, one, other);
                return (
                  <td key={keys[column]}>
                    <TypedWord
                      label={ROUTES.distanceOf(other, one)}
                      shown={metres === null ? '' : String(metres)}
                      hint="…"
                      type="number"
                      range={RANGES.metres}
                      value={metres === null ? '' : String(metres)}
                      isOptional
                      onDecide={(typed) =>
                        onChange(changeDistance(other, one, typed === '' ? null : Number(typed)))
                      }
                    />
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
