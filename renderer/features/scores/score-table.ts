import type { FlagView, LessonView } from '../../../src-core/contract/lesson-view.ts';
import type { SlotIndex, SquadCode, StationCode } from '../../../src-core/lesson/plan.ts';
import type { PupilScore, SquadScore } from '../../../src-core/marking/points.ts';
import type { FlagCode } from '../../../src-core/matching/flag.ts';
import { listOpenFlags } from '../../client/flag-step.ts';

/** How a stamped box is drawn: by whom it is decided, and what it came to. */
export interface SlotBox {
  readonly slot: SlotIndex;
  readonly station: StationCode;
  readonly clip: string | null;
  /** `lost`: the order rule takes it. `open`: a criterion has no answer. */
  readonly result: 'earned' | 'partly' | 'unmet' | 'open' | 'lost' | 'no-clip';
  readonly state: 'inked' | 'pencilled' | 'flagged' | 'no-clip';
  /** The flag that waits, where one does. */
  readonly flag: FlagCode | null;
  readonly points: number;
  readonly max: number;
  /** Changed by hand. */
  readonly isByHand: boolean;
}

/** A squad's line of the table. */
export interface SquadRow {
  readonly squad: SquadCode;
  readonly score: SquadScore;
  readonly boxes: readonly SlotBox[];
  readonly clipPoints: number;
  readonly clipMax: number;
  /** The teacher stands behind every clip that counts, and no flag of them waits. */
  readonly areClipsInked: boolean;
  /** The same of everything that the sum is made of. */
  readonly isInked: boolean;
  readonly pupils: readonly PupilScore[];
}

/** The table of scores: a line a squad, opening to its pupils. */
export function buildScoreTable(
  lesson: Pick<LessonView, 'squadScores' | 'pupilScores' | 'flags' | 'clips' | 'reading'>,
): readonly SquadRow[] {
  const open = (['bring-in', 'line-up'] as const).flatMap((step) => listOpenFlags(lesson, step));
  return lesson.squadScores.map((score): SquadRow => {
    const boxes = score.slots.map((_, at) => buildBox(open, score, at));
    const areClipsInked = boxes.every(({ clip, state }) => clip === null || state === 'inked');
    const isGiven = score.criteria.every(({ decided }) => decided !== null);
    return {
      squad: score.squad,
      score,
      boxes,
      clipPoints: score.sum.clipPoints,
      clipMax: boxes.reduce((sum, { max }) => sum + max, 0),
      areClipsInked,
      isInked: areClipsInked && isGiven && score.openFlags.length === 0,
      pupils: lesson.pupilScores.filter(({ pupil }) => pupil.squad === score.squad),
    };
  });
}

function buildBox(open: readonly FlagView[], score: SquadScore, at: number): SlotBox {
  const slot = score.slots[at];
  if (!slot) throw new Error('a slot of the squad');
  const clip = slot.clip?.clip ?? null;
  // A flag may be filed under another squad than the one whose clip it is about; only without a clip its squad counts.
  const flag = open.find((one) =>
    one.flag.clip === null
      ? one.flag.squad === score.squad && 'slot' in one.flag && one.flag.slot === slot.slot
      : one.flag.clip === clip,
  );
  const points = score.sum.parts
    .filter((part) => part.code !== 'squad-criterion' && part.slot === slot.slot)
    .reduce((sum, part) => sum + part.points, 0);
  return {
    slot: slot.slot,
    station: slot.station,
    clip,
    result: getResult(score, at),
    state: flag ? 'flagged' : slot.state,
    flag: flag?.flag.code ?? null,
    points,
    max: slot.max,
    isByHand: slot.override !== null,
  };
}

function getResult(score: SquadScore, at: number): SlotBox['result'] {
  const slot = score.slots[at];
  const part = score.sum.parts.find((one) => one.code === 'slot' && one.slot === slot?.slot);
  if (!slot?.clip || part?.code !== 'slot') return 'no-clip';
  if (part.reason === 'order') return 'lost';
  const { criteria, earned, max } = slot.clip;
  if (criteria.some(({ shown }) => shown === null)) return 'open';
  if (earned >= max) return 'earned';
  return earned > 0 ? 'partly' : 'unmet';
}

/** Clips that count and that nobody stands behind yet. */
export function countPencilled(rows: readonly SquadRow[]): number {
  const boxes = rows.flatMap((row) => row.boxes);
  return boxes.filter(({ clip, state }) => clip !== null && state !== 'inked').length;
}

/** Squads to which the order rule makes a difference. */
export function listBroken(rows: readonly SquadRow[]): readonly SquadRow[] {
  return rows.filter(({ score }) => score.firstBreak !== null);
}
