import { findSquad, type Plan } from '../lesson/plan.ts';
import type { LessonScore, PupilScore } from '../marking/points.ts';
import type { SumPart } from '../marking/sum.ts';

/** Columns of the account, in order. */
export type AccountColumn =
  | 'pupil'
  | 'name'
  | 'squad'
  | 'step'
  | 'what'
  | 'points'
  | 'max'
  | 'confirmed'
  | 'why';

/** How an account is worded; the faces pass the teacher's language. */
export interface AccountWords {
  readonly heads: Readonly<Record<AccountColumn, string>>;
  /** What a part is about: a station, a criterion, a change by hand. */
  readonly what: (plan: Plan, part: SumPart) => string;
  /** Why it gave what it gave. */
  readonly why: (plan: Plan, part: SumPart) => string;
  readonly confirmed: (isConfirmed: boolean) => string;
  /** For pupils without a mark: why there is none. */
  readonly noMark: (score: PupilScore) => string;
}

/** One row of the account. */
export interface AccountRow {
  readonly cells: readonly (string | number | null)[];
  /** Nobody stands behind it yet. */
  readonly isPencilled: boolean;
}

/** Where every point of every pupil came from: a row a part, and the rows of a pupil add up to the pupil's points. */
export interface AccountSheet {
  readonly heads: readonly string[];
  readonly rows: readonly AccountRow[];
}

const COLUMNS: readonly AccountColumn[] = [
  'pupil',
  'name',
  'squad',
  'step',
  'what',
  'points',
  'max',
  'confirmed',
  'why',
];

/** The account of a lesson's marks in the roster's order; a pupil without a mark has one row that says why. */
export function buildAccountSheet(plan: Plan, score: LessonScore, words: AccountWords): AccountSheet {
  return {
    heads: COLUMNS.map((column) => words.heads[column]),
    rows: score.pupils.flatMap((one) => buildPupilRows(plan, one, words)),
  };
}

function buildPupilRows(plan: Plan, score: PupilScore, words: AccountWords): readonly AccountRow[] {
  const { pupil, sum } = score;
  const who = [
    pupil.id,
    [pupil.family, pupil.given].filter((part) => part !== '').join(', '),
    findSquad(plan, pupil.squad)?.name ?? pupil.squad,
  ];
  if (!sum)
    return [{ cells: [...who, null, null, null, null, null, words.noMark(score)], isPencilled: false }];
  return sum.parts.map((part): AccountRow => {
    const isConfirmed = part.code === 'override' || part.confirmed;
    const what = [
      getStep(part),
      words.what(plan, part),
      part.points,
      part.code === 'override' ? null : part.max,
    ];
    return {
      cells: [...who, ...what, words.confirmed(isConfirmed), words.why(plan, part)],
      isPencilled: !isConfirmed,
    };
  });
}

/** Steps count from 1 wherever people read them. */
function getStep(part: SumPart): number | null {
  return part.code === 'squad-criterion' || part.slot === null ? null : part.slot + 1;
}
