import { isSame } from '../../../src-core/contract/lesson-update.ts';
import type { FlagView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { Plan, SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';
import type { FlagCode } from '../../../src-core/matching/flag.ts';
import type { ClipId } from '../../../src-core/matching/observation.ts';
import { isOpen } from '../../client/flag-step.ts';

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
  /** What it was made of. */
  readonly of: Lesson;
  /** By squads, from left to right; the same holes as in `lines`. */
  readonly columns: readonly CardColumn[];
  readonly lines: readonly CardLine[];
  readonly inked: number;
  readonly left: number;
  readonly missing: number;
}

/** A squad's column on the card. */
export interface CardColumn {
  /** Null: before clips were read. */
  readonly score: SquadScore | null;
  readonly holes: readonly Hole[];
}

type Lesson = Pick<LessonView, 'plan' | 'flags' | 'squadScores'>;
type Squad = Plan['squads'][number];
type SquadScore = LessonView['squadScores'][number];

/**
 * Stations by squads, punched as clips are inked. Empty slots stand open until clips were read. Holes and lines that say
 * the same as on the card `before` stay the very same objects.
 */
export function buildClassCard(lesson: Lesson, before: ClassCard | null = null): ClassCard {
  const { stations, squads } = lesson.plan;
  const flagged = findFlagged(lesson.flags);
  const columns = squads.map((squad, at) => buildColumn(lesson, squad, { from: before, at, flagged }));
  const lines = stations.map(({ code, place }, at): CardLine => {
    const holes = columns.flatMap((column) => column.holes[at] ?? []);
    const known = before?.lines[at];
    if (known && before?.of.plan === lesson.plan && holes.every((hole, of) => hole === known.holes[of])) {
      return known;
    }
    const left = holes.filter(({ state }) => state === 'pencilled' || state === 'flagged').length;
    return { station: code, place, holes, left };
  });
  const all = lines.flatMap(({ holes }) => holes);
  return {
    of: lesson,
    columns,
    lines,
    inked: all.filter(({ state }) => state === 'inked').length,
    left: lines.reduce((sum, { left }) => sum + left, 0),
    missing: all.filter(({ state }) => state === 'gone').length,
  };
}

/** The first flag that waits by clip: a flag may be filed under another squad than the one whose clip it is about. */
type Flagged = ReadonlyMap<ClipId, FlagCode>;

function findFlagged(flags: readonly FlagView[]): Flagged {
  const flagged = new Map<ClipId, FlagCode>();
  for (const view of flags) {
    const { clip, code } = view.flag;
    if (clip !== null && isOpen(view) && !flagged.has(clip)) flagged.set(clip, code);
  }
  return flagged;
}

/** A squad's holes, from the first station to the last. */
function buildColumn(
  { plan, flags, squadScores }: Lesson,
  squad: Squad,
  { from, at, flagged }: { readonly from: ClassCard | null; readonly at: number; readonly flagged: Flagged },
): CardColumn {
  const score = squadScores.find((one) => one.squad === squad.code) ?? null;
  const before = from?.of.plan === plan ? from.columns[at] : undefined;
  if (before && before.score === score && from?.of.flags === flags) return before;
  const holes = plan.stations.map(({ code }, of) => {
    const hole = buildHole(squad, code, { score, flagged });
    const known = before?.holes[of];
    return known && isSame(known, hole) ? known : hole;
  });
  return { score, holes };
}

function buildHole(
  { code: squad, route }: Squad,
  station: StationCode,
  { score, flagged }: { readonly score: SquadScore | null; readonly flagged: Flagged },
): Hole {
  const filled = score?.slots.find((slot) => slot.station === station)?.clip ?? null;
  const clip = filled?.clip ?? null;
  const flag = (clip !== null && flagged.get(clip)) || null;
  const known = { squad, station, clip, flag };
  if (!filled) return { ...known, state: route.includes(station) ? 'gone' : 'none' };
  // A flag outlives the ink: whoever inks a clip has not yet said what its flag means.
  if (flag) return { ...known, state: 'flagged' };
  return { ...known, state: filled.confirmed ? 'inked' : 'pencilled' };
}
