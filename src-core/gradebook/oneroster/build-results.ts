import type { Plan } from '../../lesson/plan.ts';
import type { LessonScore, PupilScore } from '../../marking/points.ts';
import { listNotes, type SheetWords } from '../grade-sheet.ts';
import type { Row } from './read-table.ts';

/** What results are written for. */
export interface ResultOrder {
  readonly lineItem: string;
  readonly classId: string;
  /** What a pupil who was there throughout can earn at most. */
  readonly max: number;
  /** Day of the hand-in, `2025-05-15`. */
  readonly scoreDate: string;
  readonly words: SheetWords;
}

type ScoreStatus = 'exempt' | 'not submitted' | 'partially graded' | 'fully graded';

/** A pupil's result as both versions can tell it; 1.1 leaves out the columns that it does not have. */
export function buildResult(score: PupilScore, lesson: LessonScore, order: ResultOrder): Row {
  const status = getScoreStatus(score, lesson);
  const isScored = status === 'partially graded' || status === 'fully graded';
  const notes = [...listNotes(score).map(order.words.note), ...(isScored ? describeShare(score, order) : [])];
  return {
    sourcedId: `${order.lineItem}-${score.pupil.id}`,
    lineItemSourcedId: order.lineItem,
    studentSourcedId: score.pupil.id,
    scoreStatus: status,
    score: isScored ? String(getScore(score, order.max)) : '',
    scoreDate: order.scoreDate,
    comment: notes.join('; '),
    textScore: isScored ? (score.scale ?? '') : '',
    classSourcedId: order.classId,
    inProgress: String(status === 'partially graded'),
    incomplete: String(isScored && countClips(score) < score.slots.length),
    late: 'false',
    missing: String(status === 'not submitted'),
  };
}

/**
 * How far a mark is: excused pupils are exempt and never a zero; absent ones, and those for whom no clip was handed
 * in and who were given no points, have submitted nothing; while an answer or a flag is open the mark is partial.
 */
function getScoreStatus(score: PupilScore, lesson: LessonScore): ScoreStatus {
  if (score.state === 'excused') return 'exempt';
  if (score.state === 'absent' || !hasWork(score)) return 'not submitted';
  return score.state === 'confirmed' && lesson.openFlags.length === 0 ? 'fully graded' : 'partially graded';
}

/** Whether there is a clip to be marked, or the teacher gave points without one: of the squad's, or in an override. */
function hasWork({ sum }: PupilScore): boolean {
  return (sum?.parts ?? []).some((part) => {
    return part.code === 'slot' ? part.clip !== null : part.code === 'override' || part.points > 0;
  });
}

/** Slots that count for the pupil and have a clip. */
function countClips({ sum }: PupilScore): number {
  return (sum?.parts ?? []).filter((part) => part.code === 'slot' && part.clip !== null).length;
}

/**
 * The points on the line item's own scale: a late pupil's share of what could be earned after coming, in hundredths,
 * for a line item has one maximum for everybody.
 */
function getScore({ sum }: PupilScore, max: number): number {
  if (!sum || sum.max === max || sum.max === 0) return sum?.points ?? 0;
  return Math.round((sum.points / sum.max) * max * 100) / 100;
}

function describeShare({ sum }: PupilScore, { max }: ResultOrder): readonly string[] {
  return sum && sum.max !== max ? [`${sum.points} of ${sum.max} while there`] : [];
}

/** What a line item of the lesson can earn at most: its clips' and its squads' criteria, for the longest route. */
export function getLessonMax(plan: Plan, lesson: LessonScore): number {
  const most = Math.max(0, ...lesson.squads.map(({ sum }) => sum.max));
  return most > 0 ? most : plan.rubric.squad.reduce((sum, { maxPoints }) => sum + maxPoints, 0);
}
