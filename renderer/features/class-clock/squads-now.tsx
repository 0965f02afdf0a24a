import type { ClassPart } from '../../../src-core/lesson/class-clock.ts';
import { findStation, type Plan } from '../../../src-core/lesson/plan.ts';
import { CLASS_CLOCK } from '../../text/english/class-clock.ts';
import { Plate } from '../../ui/marks.tsx';
import { SquadMark } from '../../ui/squads.tsx';

/** Where each squad is in this slot; before the work, where it begins. */
export function SquadsNow({ plan, part }: { readonly plan: Plan; readonly part: ClassPart }) {
  const isBefore = part.kind === 'before' || part.kind === 'warm-up';
  const slot = part.kind === 'slot' ? part.slot : isBefore ? 0 : Number.POSITIVE_INFINITY;
  return (
    <ul className="cc-now" aria-label={CLASS_CLOCK.now}>
      {plan.squads.map(({ code, route }) => {
        const station = findStation(plan, route[slot] ?? '');
        const place = station && (isBefore ? CLASS_CLOCK.firstAt(station.place) : station.place);
        return (
          <li key={code}>
            {station && <Plate letter={station.code} />}
            <span>
              <SquadMark squad={code} />
              <small>{place ?? CLASS_CLOCK.done}</small>
            </span>
          </li>
        );
      })}
    </ul>
  );
}
