import { formatStationCard } from '../lesson/card-text.ts';
import { hasClues, type Plan, type Station } from '../lesson/plan.ts';
import { buildCardCode, type CardCode } from './card-code.ts';
import { findSaid, type Said } from './said.ts';

/** What hangs at a station: exercise, reps, how to film, with care, and the code that a clip is known by. */
export interface StationCard {
  readonly kind: 'station-card';
  readonly code: Station['code'];
  readonly place: Said;
  readonly exercise: Said;
  readonly reps: number;
  readonly counting: Station['counting'];
  /** Null: the counting rule's own words serve. */
  readonly countsAs: Said | null;
  readonly caution: Said | null;
  readonly easier: Said | null;
  readonly harder: Said | null;
  /** How a squad knows where to go next. */
  readonly leadsOn: 'clue' | 'route';
  /** Web address of a demonstration, which stands in the code. */
  readonly demonstration: Said | null;
  readonly qr: CardCode;
  readonly lesson: Said;
  readonly className: Said;
  readonly revision: number;
}

/** Width of a station card's code, quiet zone aside: what leaves the card's words their room beside it. */
const CODE_WIDTH_MM = 84;

/** One card a station, in the plan's order. */
export function buildStationCards(plan: Plan): readonly StationCard[] {
  const { title, className, revision, code: lesson } = plan.lesson;
  const leadsOn = hasClues(plan) ? 'clue' : 'route';
  return plan.stations.map((station, at): StationCard => {
    const say = (field: 'countsAs' | 'caution' | 'easier' | 'harder' | 'demonstration') =>
      findSaid(station[field], `stations[${at}].${field}`);
    const { code, reps, counting, demonstration } = station;
    return {
      kind: 'station-card',
      code,
      place: { text: station.place, field: `stations[${at}].place` },
      exercise: { text: station.exercise, field: `stations[${at}].exercise` },
      reps,
      counting,
      countsAs: say('countsAs'),
      caution: say('caution'),
      easier: say('easier'),
      harder: say('harder'),
      leadsOn,
      demonstration: say('demonstration'),
      qr: buildCardCode(formatStationCard({ lesson, station: code, revision, demonstration }), CODE_WIDTH_MM),
      lesson: { text: title, field: 'lesson.title' },
      className: { text: className, field: 'lesson.className' },
      revision,
    };
  });
}
