import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';
import type { FlagCode } from '../../../src-core/matching/flag.ts';
import type { ClipId } from '../../../src-core/matching/observation.ts';

/** One hole of the class card: a squad at a station. */
export interface Hole {
  readonly squad: SquadCode;
  readonly station: StationCode;
  /** `none`: the squad's route does not come here. `gone`: it does, and there is no clip. */
  readonly state: 'inked' | 'pencilled' | 'flagged' | 'gone' | 'none';
  readonly clip: ClipId | null;
  /** The flag that waits, where one does. */
  readonly flag: FlagCode | null;
}

/** A station's line on the card. */
export interface CardLine {
  readonly station: StationCode;
  readonly place: string;
  readonly holes: readonly Hole[];
  readonly left: number;
}

/** The class card with its counts. */
export interface ClassCard {
  readonly lines: readonly CardLine[];
  readonly inked: number;
  readonly left: number;
  readonly missing: number;
}

type Lesson = Pick<LessonView, 'plan' | 'flags' | 'squadScores'>;

/** Stations by squads, punched as clips are inked. Empty slots stand open until clips were read. */
export function buildClassCard(lesson: Lesson): ClassCard {
  const lines = lesson.plan.stations.map(({ code, place }): CardLine => {
    const holes = lesson.plan.squads.map((squad) => buildHole(lesson, squad.code, code));
    const left = holes.filter(({ state }) => state === 'pencilled' || state === 'flagged').length;
    return { station: code, place, holes, left };
  });
  const all = lines.flatMap(({ holes }) => holes);
  return {
    lines,
    inked: all.filter(({ state }) => state === 'inked').length,
    left: lines.reduce((sum, { left }) => sum + left, 0),
    missing: all.filter(({ state }) => state === 'gone').length,
  };
}

function buildHole({ plan, flags, squadScores }: Lesson, squad: SquadCode, station: StationCode): Hole {
  const slot = squadScores
    .find((score) => score.squad === squad)
    ?.slots.find((one) => one.station === station);
  const clip = slot?.clip?.clip ?? null;
  const open = flags.find(
    ({ asks, answer, flag }) =>
      asks && !answer && flag.squad === squad && clip !== null && flag.clip === clip,
  );
  const known = { squad, station, clip, flag: open?.flag.code ?? null };
  const isOnRoute = plan.squads.find(({ code }) => code === squad)?.route.includes(station) ?? false;
  if (!slot?.clip) return { ...known, state: isOnRoute ? 'gone' : 'none' };
  // A flag outlives the ink: whoever inks a clip has not yet said what its flag means.
  if (open) return { ...known, state: 'flagged' };
  return { ...known, state: slot.clip.confirmed ? 'inked' : 'pencilled' };
}
