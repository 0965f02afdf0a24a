import type { ClipView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';
import type { ClipId } from '../../../src-core/matching/observation.ts';

/** In which order clips come to be marked. */
export type QueueOrder = 'flagged' | 'stations' | 'squads';

/** One clip that counts for a slot, as it stands in the queue. */
export interface QueueItem {
  readonly clip: ClipView;
  readonly squad: SquadCode;
  /** The station that the slot asks for. */
  readonly station: StationCode;
  readonly slot: number;
  /** Every criterion is the teacher's own answer. */
  readonly isInked: boolean;
  /** A flag of it waits for the teacher. */
  readonly isFlagged: boolean;
}

type Lesson = Pick<LessonView, 'plan' | 'clips' | 'flags' | 'squadScores'>;

/** Every clip that counts for a slot, in the order to be marked. */
export function listQueue(lesson: Lesson, order: QueueOrder): readonly QueueItem[] {
  const items = listBySquad(lesson);
  if (order === 'squads') return items;
  const { stations, squads } = lesson.plan;
  const stationAt = new Map(stations.map(({ code }, at) => [code, at]));
  const squadAt = new Map(squads.map(({ code }, at) => [code, at]));
  const byStation = items.toSorted(
    (one, other) =>
      (stationAt.get(one.station) ?? 0) - (stationAt.get(other.station) ?? 0) ||
      (squadAt.get(one.squad) ?? 0) - (squadAt.get(other.squad) ?? 0),
  );
  if (order === 'stations') return byStation;
  return byStation.toSorted((one, other) => Number(other.isFlagged) - Number(one.isFlagged));
}

function listBySquad({ clips, flags, squadScores }: Lesson): QueueItem[] {
  const byId = new Map(clips.map((clip) => [clip.id, clip]));
  const open = new Set(flags.filter(({ asks, answer }) => asks && !answer).map(({ flag }) => flag.clip));
  return squadScores.flatMap(({ squad, slots }) =>
    slots.flatMap(({ slot, station, clip: score }): QueueItem[] => {
      const clip = score ? byId.get(score.clip) : undefined;
      if (!score || !clip) return [];
      const isFlagged = open.has(clip.id);
      return [{ clip, squad, station, slot, isInked: score.confirmed, isFlagged }];
    }),
  );
}

/** The next clip to be marked after this one, round to the first; null where every other is inked. */
export function findNextLeft(queue: readonly QueueItem[], current: ClipId | null): QueueItem | null {
  const others = turnAfter(queue, current).filter(({ clip }) => clip.id !== current);
  return others.find(({ isInked }) => !isInked) ?? null;
}

/** The clip to begin with: the first that is not inked; null where all are. */
export function findFirstLeft(queue: readonly QueueItem[]): QueueItem | null {
  return queue.find(({ isInked }) => !isInked) ?? null;
}

/** The next clip with an open flag after this one, round to the first; null where there is none. */
export function findNextFlagged(queue: readonly QueueItem[], current: ClipId | null): QueueItem | null {
  return turnAfter(queue, current).find(({ isFlagged }) => isFlagged) ?? null;
}

/** The clip before this one in the queue; null before the first. */
export function findBefore(queue: readonly QueueItem[], current: ClipId | null): QueueItem | null {
  const at = queue.findIndex(({ clip }) => clip.id === current);
  return at > 0 ? (queue[at - 1] ?? null) : null;
}

/** The queue beginning behind a clip, that clip last. */
function turnAfter(queue: readonly QueueItem[], current: ClipId | null): readonly QueueItem[] {
  const at = queue.findIndex(({ clip }) => clip.id === current);
  return [...queue.slice(at + 1), ...queue.slice(0, at + 1)];
}

/** Other squads' clips of a clip's station, that clip first, at most four in all. */
export function listComparable(queue: readonly QueueItem[], current: ClipId): readonly QueueItem[] {
  const own = queue.find(({ clip }) => clip.id === current);
  if (!own) return [];
  const others = queue.filter(
    ({ station, clip }) => station === own.station && clip.id !== current && clip.holds === 'video',
  );
  return [own, ...others].slice(0, MOST_COMPARED);
}

/** Films that still can be told apart side by side. */
const MOST_COMPARED = 4;
