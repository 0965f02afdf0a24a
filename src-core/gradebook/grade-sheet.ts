import { findSquad, type Plan, type SheetField } from '../lesson/plan.ts';
import type { PointsChange } from '../marking/journal-event.ts';
import type { LessonScore, PupilScore, PupilState } from '../marking/points.ts';
import type { PresenceNote } from '../marking/presence.ts';

/** What a field holds, which says how it may be written: ids and numbers exactly as they are, text made safe. */
export type ColumnKind = 'id' | 'number' | 'text';

/** A column as the plan or the destination's mapping asks for it. */
export interface SheetColumn {
  readonly head: string;
  readonly field: SheetField;
}

/** One row per pupil; a cell is null where there is nothing to write: absent pupils have no number. */
export interface GradeSheet {
  readonly columns: readonly (SheetColumn & { readonly kind: ColumnKind })[];
  readonly rows: readonly (readonly (string | number | null)[])[];
}

/** What a comment cell can tell. */
export type SheetNote =
  /** Written while flags were open; the count is the whole lesson's. */
  | { readonly code: 'not-final'; readonly openFlags: number }
  | { readonly code: 'late'; readonly arrived: string | null }
  | { readonly code: PresenceNote }
  /** Points changed by hand for this pupil. */
  | { readonly code: 'by-hand'; readonly change: PointsChange; readonly reason: string };

/** How codes are put into cells; the faces may pass the teacher's language. */
export interface SheetWords {
  readonly state: (state: PupilState) => string;
  readonly note: (note: SheetNote) => string;
}

const PRESENCE_NOTES: Readonly<Record<PresenceNote, string>> = {
  'late-without-arrival': 'no time of arrival: whole route counts',
  'late-without-times': 'no clip has a time: whole route counts',
};

/** Fixed lower-case words for sheets that another program reads. */
export const PLAIN_WORDS: SheetWords = {
  state: (state) => state,
  note: (note) => {
    if (note.code === 'not-final')
      return `not final: ${note.openFlags} ${note.openFlags === 1 ? 'flag' : 'flags'} open`;
    if (note.code === 'late') return note.arrived === null ? 'late' : `late ${note.arrived}`;
    if (note.code !== 'by-hand') return PRESENCE_NOTES[note.code];
    const { type, points } = note.change;
    const change = points < 0 ? `minus ${-points}` : `plus ${points}`;
    return `${type === 'to' ? `set to ${points}` : change} by hand: ${note.reason}`;
  },
};

const KINDS: Readonly<Record<SheetField, ColumnKind>> = {
  pupil: 'id',
  name: 'text',
  given: 'text',
  family: 'text',
  squad: 'text',
  points: 'number',
  max: 'number',
  percent: 'number',
  scale: 'text',
  state: 'text',
  comment: 'text',
};

/** How a sheet differs from the plan's. */
export interface SheetOptions {
  /** Columns for one destination, instead of the plan's. */
  readonly columns?: readonly SheetColumn[];
  readonly words?: SheetWords;
}

/**
 * The grade sheet of a lesson, in the roster's order. Where a mark is unconfirmed or a flag is open and no column
 * tells the state, one named `state` is added at the end, so that confirmed and unconfirmed never look alike. While
 * a flag is open anywhere, every state says that the sheet is not final.
 */
export function buildGradeSheet(plan: Plan, score: LessonScore, options: SheetOptions = {}): GradeSheet {
  const { words = PLAIN_WORDS } = options;
  const asked = options.columns ?? plan.gradeSheet.columns;
  const columns =
    needsState(score) && !asked.some(({ field }) => field === 'state') ? withState(asked) : asked;
  return {
    columns: columns.map((column) => ({ ...column, kind: KINDS[column.field] })),
    rows: score.pupils.map((pupil) => {
      const openFlags = score.openFlags.length;
      return columns.map(({ field }) => getCell(pupil, field, { plan, words, openFlags }));
    }),
  };
}

function needsState(score: LessonScore): boolean {
  return score.openFlags.length > 0 || score.pupils.some(({ state }) => state === 'unconfirmed');
}

function withState(columns: readonly SheetColumn[]): readonly SheetColumn[] {
  return [...columns, { head: 'state', field: 'state' }];
}

interface CellContext {
  readonly plan: Plan;
  readonly words: SheetWords;
  /** Of the whole lesson. */
  readonly openFlags: number;
}

function getCell(score: PupilScore, field: SheetField, context: CellContext): string | number | null {
  const { pupil } = score;
  const cells: Readonly<Record<SheetField, () => string | number | null>> = {
    pupil: () => pupil.id,
    name: () => [pupil.family, pupil.given].filter((part) => part !== '').join(', '),
    given: () => pupil.given,
    family: () => pupil.family,
    squad: () => findSquad(context.plan, pupil.squad)?.name ?? pupil.squad,
    points: () => score.sum?.points ?? null,
    max: () => score.sum?.max ?? null,
    percent: () => score.percent,
    scale: () => score.scale,
    state: () => getState(score, context),
    comment: () => listNotes(score).map(context.words.note).join('; '),
  };
  return cells[field]();
}

function getState({ state }: PupilScore, { words, openFlags }: CellContext): string {
  const word = words.state(state);
  return openFlags > 0 ? `${word}, ${words.note({ code: 'not-final', openFlags })}` : word;
}

/** What there is to say of a pupil’s mark, for a comment. */
export function listNotes({ attendance, notes, override }: PupilScore): readonly SheetNote[] {
  return [
    ...(attendance.attendance === 'late' ? [{ code: 'late' as const, arrived: attendance.arrived }] : []),
    ...notes.map((code) => ({ code })),
    ...(override ? [{ code: 'by-hand' as const, ...override }] : []),
  ];
}
