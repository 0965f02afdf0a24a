import type { CsvSheet } from '../gradebook/csv.ts';
import { findMedian } from '../marking/look-back/build-series.ts';
import type { LessonSummary, SquadSummary } from '../marking/look-back/lesson-summary.ts';
import type { Section } from '../marking/look-back/look-back.ts';
import type { FlagCode } from '../matching/flag.ts';

/** How the heads of exported figures are worded; the faces pass the teacher's language. */
export interface FigureWords {
  readonly heads: Readonly<Record<PlainColumn, string>>;
  readonly flags: (code: FlagCode) => string;
  /** Of a criterion: clips that meet it, those answered, those answered by the machine alone. */
  readonly met: (label: string) => string;
  readonly answered: (label: string) => string;
  readonly pencilled: (label: string) => string;
  /** Of a squad's own criterion: points given, and the most there are. */
  readonly given: (label: string) => string;
  readonly most: (label: string) => string;
  readonly confirmed: (isConfirmed: boolean) => string;
}

const PLAIN = {
  date: 'text',
  start: 'text',
  lesson: 'text',
  title: 'text',
  school: 'text',
  class: 'text',
  squad: 'text',
  slots: 'number',
  clips: 'number',
  points: 'number',
  max: 'number',
  confirmed: 'text',
  flags: 'number',
  openFlags: 'number',
  repsTold: 'number',
  repsShort: 'number',
  unisonClips: 'number',
  unison: 'number',
} as const;

type PlainColumn = keyof typeof PLAIN;

interface Column {
  readonly head: string;
  readonly kind: 'text' | 'number';
  readonly getCell: (squad: SquadSummary, lesson: LessonSummary) => string | number | null;
}

/** The figures of sections' lessons: a row for each squad in each lesson, oldest first; numbers, nothing rounded away. */
export function buildFigures(sections: readonly Section[], words: FigureWords): CsvSheet {
  const lessons = sections.flatMap((section) => section.lessons);
  const columns = [...listPlain(words), ...listFlags(lessons, words), ...listCriteria(lessons, words)];
  return {
    columns: columns.map(({ head, kind }) => ({ head, kind })),
    rows: lessons.flatMap((lesson) =>
      lesson.squads.map((squad) => columns.map(({ getCell }) => getCell(squad, lesson))),
    ),
  };
}

function listPlain(words: FigureWords): readonly Column[] {
  const keys = Object.keys(PLAIN) as PlainColumn[];
  return keys.map((key) => ({
    head: words.heads[key],
    kind: PLAIN[key],
    getCell: (squad, lesson) => getPlain(squad, lesson, words)[key],
  }));
}

function getPlain(
  squad: SquadSummary,
  { lesson }: LessonSummary,
  words: FigureWords,
): Readonly<Record<PlainColumn, string | number | null>> {
  const { slots, clips, points, max, isConfirmed, flags, reps, unison } = squad;
  const { date, start, code, title, school, className } = lesson;
  return {
    ...{ date, start, lesson: code, title, school, class: className, squad: squad.name },
    ...{ slots, clips, points, max, confirmed: words.confirmed(isConfirmed) },
    flags: flags.reduce((sum, { open, kept, cleared }) => sum + open + kept + cleared, 0),
    openFlags: flags.reduce((sum, { open }) => sum + open, 0),
    ...{ repsTold: reps.told, repsShort: reps.short, unisonClips: unison.length, unison: findMedian(unison) },
  };
}

function listFlags(lessons: readonly LessonSummary[], words: FigureWords): readonly Column[] {
  const all = lessons.flatMap(({ squads }) => squads.flatMap(({ flags }) => flags.map(({ code }) => code)));
  return [...new Set(all)].toSorted().map((code) => ({
    head: words.flags(code as FlagCode),
    kind: 'number',
    getCell: ({ flags }) => {
      const { open = 0, kept = 0, cleared = 0 } = flags.find((one) => one.code === code) ?? {};
      return open + kept + cleared;
    },
  }));
}

/** Criteria go by their labels: two plans may use one code for two things. */
function listCriteria(lessons: readonly LessonSummary[], words: FigureWords): readonly Column[] {
  const ofClips = new Set(lessons.flatMap(({ criteria }) => criteria.map(({ label }) => label)));
  const ofSquads = new Set(lessons.flatMap(({ squadCriteria }) => squadCriteria.map(({ label }) => label)));
  return [
    ...[...ofClips].flatMap((label): readonly Column[] => {
      const find = (squad: SquadSummary, { criteria }: LessonSummary) => {
        const code = criteria.find((one) => one.label === label)?.code;
        return squad.answers.find(({ criterion }) => criterion === code);
      };
      const column = (
        head: string,
        add: (found: NonNullable<ReturnType<typeof find>>) => number,
      ): Column => ({
        head,
        kind: 'number',
        getCell: (squad, lesson) => {
          const found = find(squad, lesson);
          return found ? add(found) : null;
        },
      });
      return [
        column(words.met(label), (one) => one.metByTeacher + one.metByMachine),
        column(
          words.answered(label),
          (one) => one.metByTeacher + one.metByMachine + one.notMetByTeacher + one.notMetByMachine,
        ),
        column(words.pencilled(label), (one) => one.metByMachine + one.notMetByMachine),
      ];
    }),
    ...[...ofSquads].flatMap((label): readonly Column[] => {
      const find = (squad: SquadSummary, { squadCriteria }: LessonSummary) => {
        const code = squadCriteria.find((one) => one.label === label)?.code;
        return squad.marks.find(({ criterion }) => criterion === code);
      };
      return [
        { head: words.given(label), kind: 'number', getCell: (...of) => find(...of)?.points ?? null },
        { head: words.most(label), kind: 'number', getCell: (...of) => find(...of)?.max ?? null },
      ];
    }),
  ];
}
