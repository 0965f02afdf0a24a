import type { Plan } from '../../../src-core/lesson/plan.ts';
import { PLAN } from '../../text/english/plan-step.ts';
import { Plate } from '../../ui/marks.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import { buildRotation } from './rotation.ts';

/** The rotation as a timetable: slots down, squads across, stations that stand empty last. */
export function RotationTable({ plan }: { readonly plan: Plan }) {
  return (
    <Sheet label={PLAN.rotation} className="rotw">
      <header className="strip-head">
        <h2>{PLAN.rotation}</h2>
      </header>
      <div className="rot-scroll">
        <table className="rot">
          <caption className="vh">{PLAN.rotationCaption}</caption>
          <thead>
            <tr>
              <th scope="col">{PLAN.slot}</th>
              {plan.squads.map(({ code }) => (
                <th key={code} scope="col">
                  <SquadMark squad={code} />
                </th>
              ))}
              <th scope="col">
                <i>{PLAN.free}</i>
              </th>
            </tr>
          </thead>
          <tbody>
            {buildRotation(plan).map(({ slot, at, free }) => (
              <tr key={slot}>
                <th scope="row">{slot + 1}</th>
                {at.map(({ squad, station }) => (
                  <td key={squad}>
                    {station && <Plate letter={station} {...(slot > 0 && { look: 'open' })} />}
                  </td>
                ))}
                <td className="rest">{free.length > 0 ? free.join(' ') : PLAN.noneFree}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Sheet>
  );
}
