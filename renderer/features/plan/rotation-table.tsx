import type { Plan } from '../../../src-core/lesson/plan.ts';
import { ROUTES } from '../../text/english/plan-routes.ts';
import { Glyph } from '../../ui/glyph.tsx';
import { Plate } from '../../ui/marks.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import { ChoiceWord } from './choice-word.tsx';
import type { PlanEdit } from './plan-edit.ts';
import { buildRotation } from './rotation.ts';
import { changeStop } from './route-edits.ts';

/**
 * The rotation as a timetable: slots down, squads across, stations that stand empty last. Where two squads meet, both
 * are marked. Without `onChange` it is a proposal, in pencil and only to look at.
 */
export function RotationTable({
  plan,
  times,
  onChange,
}: {
  readonly plan: Plan;
  /** When each slot begins, as local time; empty: not to be told. */
  readonly times: readonly string[];
  readonly onChange?: (edit: PlanEdit) => void;
}) {
  const names = new Map(plan.squads.map(({ code, name }) => [code, name]));
  const choices = plan.stations.map(({ code, place }) => [code, `${code} ${place}`] as const);
  return (
    <div className="rot-scroll">
      <table className="rot">
        <caption className="vh">{onChange ? ROUTES.caption : ROUTES.proposedCaption}</caption>
        <thead>
          <tr>
            <th scope="col">{ROUTES.slot}</th>
            {plan.squads.map(({ code }) => (
              <th key={code} scope="col">
                <SquadMark squad={code} />
              </th>
            ))}
            <th scope="col">
              <i>{ROUTES.free}</i>
            </th>
          </tr>
        </thead>
        <tbody>
          {buildRotation(plan).map(({ slot, at, free, meeting }) => (
            <tr key={slot}>
              <th scope="row">
                {slot + 1} <span>{times[slot]}</span>
              </th>
              {at.map(({ squad, station }, column) => (
                <td key={squad} className={station && meeting.includes(station) ? 'meets' : ''}>
                  {station && !onChange && <Plate letter={station} look="pencilled" />}
                  {station && onChange && (
                    <ChoiceWord
                      label={ROUTES.stopOf(names.get(squad) ?? squad, slot + 1)}
                      shown={meeting.includes(station) ? ROUTES.meets(station) : station}
                      at={`squads[${column}].route[${slot}]`}
                      choices={choices}
                      value={station}
                      onChoose={(chosen) => onChange(changeStop(squad, slot, chosen))}
                    >
                      <Plate letter={station} {...(slot > 0 && { look: 'open' })} />
                      {meeting.includes(station) && <Glyph name="clash" />}
                    </ChoiceWord>
                  )}
                </td>
              ))}
              <td className="rest">{free.length > 0 ? free.join(' ') : ROUTES.noneFree}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
