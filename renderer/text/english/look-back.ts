import type { Series } from '../../../src-core/marking/look-back/build-series.ts';
import type { LookBack } from '../../../src-core/marking/look-back/look-back.ts';
import { count } from './amounts.ts';
import { nameFlag } from './flags.ts';

/** What is followed over a section's lessons; all but flags are shares. */
export type Measure = 'points' | 'flags' | 'repsShort' | 'unison';

/** What a number beside a plot is of. */
export type Figure = Measure | 'criterion';

/** All that is said when lessons are looked back on. */
export const LOOK_BACK = {
  head: 'Look back',
  sentence: 'Did the class get better? Squads and criteria across lessons; no pupil is followed.',
  open: 'Look back on classes…',
  lessonsAgain: 'Lessons',
  otherFolder: 'Look in another folder…',
  reading: 'Reading what is kept of the lessons…',
  adding: (done: number, total: number) => `Adding up lessons, ${done} of ${total}`,
  addingShort: 'Adding up lessons',
  stop: 'Stop',
  notAdded: (lessons: number) =>
    `${count(lessons, 'lesson')} not added up yet: what is shown of ${lessons === 1 ? 'it' : 'them'} is old, or missing.`,
  goOn: 'Add up',
  empty: 'No lesson here has clips yet. Choose the folder that your lessons’ folders lie in.',
  ofClass: 'Class',
  ofCriterion: 'Criterion',
  everyCriterion: 'every criterion',
  beside: (first: string, last: string) => `beside each plot the mean of the ${first} and of the ${last}`,
  bySquad: 'By squad',
  byCriterion: 'By criterion',
  byFlag: 'Flags by kind',
  none: 'None.',
  everyLesson: 'Every lesson in numbers',
  day: 'Day',
  lesson: 'Lesson',
  write: 'Write the figures as CSV',
  replace: 'Replace it',
  written: (path: string) => `Written: ${path}`,
  measures: {
    points: 'Points',
    flags: 'Flags',
    repsShort: 'Clips with reps short',
    unison: 'Unison',
  } satisfies Record<Measure, string>,
  wholeClass: 'The class',
  section: (school: string, className: string) => `${className}, ${school}`,
  lessons: (lessons: number) => count(lessons, 'lesson'),
  pencilled: 'Hollow: not all of it is confirmed.',
  squadsNote:
    'Squads go by their code; a break in the line says that other pupils were in it from then on. No pupil is followed, and nothing is ranked.',
  filmsGone: (lessons: number) =>
    `${count(lessons, 'lesson')} without films any more: figures as they stood then.`,
  unseen: (lessons: number) =>
    `In ${count(lessons, 'lesson')} some clips were never looked into; open ${lessons === 1 ? 'it' : 'them'} once to have them counted.`,
} as const;

/** A figure as it stands beside a plot: `81 %`, flags as an amount; a dash where there is none. */
export function sayFigure(value: number | null, measure: Figure): string {
  if (value === null) return '–';
  if (measure === 'flags') return String(Number(value.toFixed(1)));
  return measure === 'unison' ? value.toFixed(2) : `${Math.round(value * 100)} %`;
}

/** `first 5 lessons`, `last lesson`: what stands at an end of a plot. */
export function sayEnd(which: 'first' | 'last', lessons: number): string {
  return lessons === 1 ? `${which} lesson` : `${which} ${lessons} lessons`;
}

/** A plot in one sentence, for those who do not see it. */
export function describeSeries(label: string, series: Series, measure: Figure): string {
  const told = series.points.filter(({ value }) => value !== null).length;
  if (told === 0) return `${label}: nothing to show.`;
  const figures = [series.early, series.late, series.last].map((value) => sayFigure(value, measure));
  const [early, late, last] = figures;
  const ends = series.early === null ? '' : ` At first ${early} on average, lately ${late};`;
  return `${label}: ${count(told, 'lesson')}.${ends} ${ends === '' ? 'The' : 'the'} newest ${last}.`;
}

/** From the first lesson's day to the last one's. */
export function getDays({ section: { lessons } }: LookBack): readonly [from: string, to: string] {
  return [lessons.at(0)?.lesson.date ?? '', lessons.at(-1)?.lesson.date ?? ''];
}

/** Heads of the exported figures. */
export const FIGURE_WORDS = {
  heads: {
    date: 'Date',
    start: 'Begin',
    lesson: 'Lesson',
    title: 'Title',
    school: 'School',
    class: 'Class',
    squad: 'Squad',
    slots: 'Slots',
    clips: 'Clips',
    points: 'Points',
    max: 'Most points',
    confirmed: 'Confirmed',
    flags: 'Flags',
    openFlags: 'Open flags',
    repsTold: 'Clips told full or short',
    repsShort: 'Clips with reps short',
    unisonClips: 'Clips measured for unison',
    unison: 'Unison, median',
  },
  flags: nameFlag,
  met: (label: string) => `${label}: met`,
  answered: (label: string) => `${label}: answered`,
  pencilled: (label: string) => `${label}: answered, not confirmed`,
  given: (label: string) => `${label}: points`,
  most: (label: string) => `${label}: most points`,
  confirmed: (isConfirmed: boolean) => (isConfirmed ? 'yes' : 'no'),
} as const;
