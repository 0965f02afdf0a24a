import type { FlagCode } from '../../matching/flag.ts';
import { groupBy } from '../../platform/group-by.ts';
import { buildSeries, findMedian, type Series, type SeriesPoint } from './build-series.ts';
import type { LessonSummary, SquadSummary } from './lesson-summary.ts';

/** A class of a school, with the lessons that it had. */
export interface Section {
  readonly school: string;
  readonly className: string;
  /** Held, oldest first. */
  readonly lessons: readonly LessonSummary[];
}

/** What is followed over a section's lessons: of one squad, or of all of them together. */
export interface Strand {
  /** Points of those that could be earned. */
  readonly points: Series;
  /** Flags that asked the teacher, whatever was answered; an amount. */
  readonly flags: Series;
  /** Clips with reps short, of those of which it is told. */
  readonly repsShort: Series;
  /** Median order parameter of the clips that it was measured in: always the machine's word. */
  readonly unison: Series;
  /** In the order of `LookBack.criteria`: clips that meet the criterion, of those with an answer. */
  readonly criteria: readonly Series[];
  /** In the order of `LookBack.squadCriteria`: points given, of those that could be. */
  readonly squadCriteria: readonly Series[];
}

/** A squad over the lessons of its section; it goes by its code, whoever was in it. */
export interface SquadStrand extends Strand {
  readonly code: string;
  /** As it was called last. */
  readonly name: string;
  readonly pinnie: SquadSummary['pinnie'];
  /** For each lesson: other pupils were in the squad than in the lesson before, as far as both had it. */
  readonly isNewlyMade: readonly boolean[];
}

/** A criterion as it was labelled last. */
export interface FollowedCriterion {
  readonly code: string;
  readonly label: string;
}

/** A section's lessons side by side. Squads stand in the plan's order; nothing is ranked, no pupil is followed. */
export interface LookBack {
  readonly section: Section;
  readonly criteria: readonly FollowedCriterion[];
  readonly squadCriteria: readonly FollowedCriterion[];
  /** Kinds of flags that came up, and how many in each lesson. */
  readonly flagKinds: readonly { readonly code: FlagCode; readonly flags: Series }[];
  readonly whole: Strand;
  readonly squads: readonly SquadStrand[];
}

/** Sections by name, schools first. Lessons without a clip were not held yet and are left out. */
export function listSections(summaries: readonly LessonSummary[]): readonly Section[] {
  const held = summaries.filter(({ clips }) => clips > 0);
  const groups = groupBy(held, ({ lesson }) => JSON.stringify([lesson.school, lesson.className]));
  return [...groups.values()]
    .map((lessons): Section => {
      const sorted = lessons.toSorted((one, other) => compareTexts(getWhen(one), getWhen(other)));
      const { school = '', className = '' } = sorted.at(-1)?.lesson ?? {};
      return { school, className, lessons: sorted };
    })
    .toSorted(
      (one, other) => compareNames(one.school, other.school) || compareNames(one.className, other.className),
    );
}

function getWhen({ lesson: { date, start, code } }: LessonSummary): string {
  return `${date} ${start} ${code}`;
}

function compareTexts(one: string, other: string): number {
  return one < other ? -1 : Number(one > other);
}

/** Class 9 before class 10, wherever this runs. */
const collator = new Intl.Collator('en', { numeric: true });
const compareNames = collator.compare;

/** Everything that is shown of a section's lessons side by side. */
export function buildLookBack(section: Section): LookBack {
  const { lessons } = section;
  const criteria = followNewest(lessons.map((lesson) => lesson.criteria));
  const squadCriteria = followNewest(lessons.map((lesson) => lesson.squadCriteria));
  const squads = followNewest(lessons.map((lesson) => lesson.squads));
  const all = lessons.flatMap((lesson) => lesson.squads.flatMap(({ flags }) => flags));
  const kinds = [...new Set(all.map(({ code }) => code))].toSorted(compareTexts) as FlagCode[];
  const codes = { criteria, squadCriteria };
  return {
    section,
    criteria: criteria.map(({ code, label }) => ({ code, label })),
    squadCriteria: squadCriteria.map(({ code, label }) => ({ code, label })),
    flagKinds: kinds.map((code) => ({
      code,
      flags: buildSeries(lessons.map((lesson) => countFlags(lesson.squads, code))),
    })),
    whole: buildStrand(
      lessons.map((lesson) => lesson.squads),
      codes,
    ),
    squads: squads.map(({ code, name, pinnie }) => {
      const own = lessons.map((lesson) => lesson.squads.filter((squad) => squad.code === code));
      return { code, name, pinnie, isNewlyMade: findNewlyMade(own), ...buildStrand(own, codes) };
    }),
  };
}

/** Each code once, as it stood in the newest lesson that has it; those of the newest lesson first, in its order. */
function followNewest<Coded extends { readonly code: string }>(
  lessons: readonly (readonly Coded[])[],
): readonly Coded[] {
  const newest = new Map<string, Coded>();
  for (const coded of lessons.toReversed().flat()) if (!newest.has(coded.code)) newest.set(coded.code, coded);
  return [...newest.values()];
}

interface Codes {
  readonly criteria: readonly FollowedCriterion[];
  readonly squadCriteria: readonly FollowedCriterion[];
}

/** @param lessons the squads that count, by lesson; none: the lesson has nothing to say */
function buildStrand(lessons: readonly (readonly SquadSummary[])[], codes: Codes): Strand {
  const follow = (getPoint: (squads: readonly SquadSummary[]) => SeriesPoint) =>
    buildSeries(lessons.map((squads) => (squads.length === 0 ? NOTHING : getPoint(squads))));
  return {
    points: follow((squads) => ({
      ...share(
        sum(squads, ({ points }) => points),
        sum(squads, ({ max }) => max),
      ),
      isInk: squads.every(({ isConfirmed }) => isConfirmed),
    })),
    flags: follow((squads) => countFlags(squads, null)),
    repsShort: follow((squads) => ({
      ...share(
        sum(squads, ({ reps }) => reps.short),
        sum(squads, ({ reps }) => reps.told),
      ),
      isInk: squads.every(({ reps }) => reps.toldByTeacher === reps.told),
    })),
    unison: follow((squads) => {
      const scores = squads.flatMap(({ unison }) => unison);
      return { value: findMedian(scores), of: scores.length, isInk: false };
    }),
    criteria: codes.criteria.map(({ code }) => follow((squads) => shareMet(squads, code))),
    squadCriteria: codes.squadCriteria.map(({ code }) => follow((squads) => shareGiven(squads, code))),
  };
}

const NOTHING: SeriesPoint = { value: null, of: 0, isInk: true };

function share(part: number, whole: number): Pick<SeriesPoint, 'value' | 'of'> {
  return { value: whole === 0 ? null : part / whole, of: whole };
}

function sum<Item>(items: readonly Item[], getAmount: (item: Item) => number): number {
  return items.reduce((total, item) => total + getAmount(item), 0);
}

function shareMet(squads: readonly SquadSummary[], criterion: string): SeriesPoint {
  const answers = squads.flatMap((squad) => squad.answers.filter((one) => one.criterion === criterion));
  const byMachine = sum(answers, ({ metByMachine, notMetByMachine }) => metByMachine + notMetByMachine);
  const byTeacher = sum(answers, ({ metByTeacher, notMetByTeacher }) => metByTeacher + notMetByTeacher);
  const met = sum(answers, ({ metByTeacher, metByMachine }) => metByTeacher + metByMachine);
  return { ...share(met, byTeacher + byMachine), isInk: byMachine === 0 };
}

function shareGiven(squads: readonly SquadSummary[], criterion: string): SeriesPoint {
  const marks = squads.flatMap((squad) => squad.marks.filter((one) => one.criterion === criterion));
  const given = marks.filter(({ points }) => points !== null);
  const part = share(
    sum(given, ({ points }) => points ?? 0),
    sum(given, ({ max }) => max),
  );
  return { ...part, isInk: true };
}

/** Open ones are pencil: whether they are right is for the teacher to say. */
function countFlags(squads: readonly SquadSummary[], kind: FlagCode | null): SeriesPoint {
  const flags = squads.flatMap((squad) => squad.flags).filter(({ code }) => kind === null || code === kind);
  return {
    value: sum(flags, ({ open, kept, cleared }) => open + kept + cleared),
    of: sum(squads, ({ slots }) => slots),
    isInk: flags.every(({ open }) => open === 0),
  };
}

function findNewlyMade(lessons: readonly (readonly SquadSummary[])[]): readonly boolean[] {
  let before: string | null = null;
  return lessons.map(([squad]) => {
    if (!squad) return false;
    const isNew = before !== null && before !== squad.makeUp;
    before = squad.makeUp;
    return isNew;
  });
}
