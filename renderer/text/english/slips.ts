import { findSquad, type Plan } from '../../../src-core/lesson/plan.ts';
import type { DoNext, Slip, WentWell } from '../../../src-core/printing/slip.ts';
import { list } from './amounts.ts';

// Read by pupils of ten and up: short sentences, short words. A test holds them to a published formula.

type Checks = Plan['rubric']['clip'][number]['checks'];

type ByCheck<Word> = Readonly<Record<Exclude<Checks, 'judgement'>, Word>>;

/** What to do about a criterion that the machine has a notion of; others go by the teacher's own label. */
const NEXT_BY_CHECK: ByCheck<string> = {
  place: 'Find the card first. Show it to the camera when you start.',
  exercise: 'Read the card once more. Do the move it tells you to.',
  reps: 'Count out loud, up to the number on the card. Stop if it hurts.',
  together: 'Say “go” and start as one. Keep the same beat.',
};

const WELL_BY_CHECK: ByCheck<string> = {
  place: 'You were at the right place each time.',
  exercise: 'You did the right move each time.',
  reps: 'You did the full count each time.',
  together: 'You moved as one each time.',
};

/** Said while some clips are not confirmed yet: of the places that are, not of each time. */
const WELL_AT_BY_CHECK: ByCheck<(places: string) => string> = {
  place: (places) => `You were at the right place: ${places}.`,
  exercise: (places) => `At ${places} you did the right move.`,
  reps: (places) => `At ${places} you did the full count.`,
  together: (places) => `At ${places} you moved as one.`,
};

function namePlaces(plan: Plan, stations: readonly string[]): string {
  return list(stations.map((code) => plan.stations.find((one) => one.code === code)?.place ?? code));
}

function findLabel({ rubric }: Plan, code: string): string {
  return [...rubric.clip, ...rubric.squad].find((one) => one.code === code)?.label ?? code;
}

/** The words for a criterion by what it checks; the teacher's own judgement goes by its label. */
function findByCheck<Word>({ rubric }: Plan, code: string, words: ByCheck<Word>): Word | null {
  const checks = rubric.clip.find((one) => one.code === code)?.checks ?? 'judgement';
  return checks === 'judgement' ? null : words[checks];
}

/** What went well, in one sentence. */
export function sayWell(plan: Plan, point: WentWell): string {
  switch (point.code) {
    case 'all-met':
      return `You got it all right at ${namePlaces(plan, point.stations)}.`;
    case 'always-met':
      return (
        findByCheck(plan, point.criterion, WELL_BY_CHECK) ??
        `${findLabel(plan, point.criterion)}: good each time.`
      );
    case 'met-at':
      return sayMetAt(plan, point.criterion, namePlaces(plan, point.stations));
    case 'order-kept':
      return 'You kept to your route, step by step.';
    case 'squad-full':
      return `${findLabel(plan, point.criterion)}: well done.`;
    case 'took-part':
      return 'You took part and filmed your work.';
  }
}

function sayMetAt(plan: Plan, criterion: string, places: string): string {
  const word = findByCheck(plan, criterion, WELL_AT_BY_CHECK);
  return word ? word(places) : `${findLabel(plan, criterion)}: good at ${places}.`;
}

/** What to do next, in one or two sentences. */
export function sayNext(plan: Plan, point: DoNext): string {
  switch (point.code) {
    case 'no-clip':
      return `There is no film from ${namePlaces(plan, point.stations)}. Film at each stop before you go on.`;
    case 'out-of-order':
      return `You were too soon or too late at ${namePlaces(plan, point.stations)}. Read the clue and take the stops in turn.`;
    case 'squad-more':
      return `${findLabel(plan, point.criterion)}: ask how you can do more next time.`;
    case 'not-met':
      return `At ${namePlaces(plan, point.stations)}: ${
        findByCheck(plan, point.criterion, NEXT_BY_CHECK) ??
        `${findLabel(plan, point.criterion)}: work on this next time.`
      }`;
  }
}

/** All that stands on a slip beside its points. */
export const SLIP = {
  well: 'What went well',
  next: 'What to do next',
  nothingNext: 'Keep it up. Do it just like this next time.',
  absent: 'We missed you. Ask your teacher what you can do next.',
  excused: 'You did not have to do this one. No mark counts for you.',
  waiting: 'Your teacher is still looking at some of your films.',
} as const;

/** A squad as pupils call it: `Teal squad`. */
export function nameSlipSquad(name: string): string {
  return `${name} squad`;
}

/** Who a slip is for: a squad by its name, a pupil by the first name alone. */
export function nameSlip(plan: Plan, { squad, pupil }: Slip): string {
  const name = nameSlipSquad(findSquad(plan, squad)?.name ?? squad);
  return pupil ? `${pupil.given}, ${name}` : name;
}

/** All sentences of one slip, in order. */
export interface SlipWords {
  /** What is said in the place of everything else, to pupils who were not there; null for all others. */
  readonly instead: string | null;
  readonly well: readonly string[];
  readonly next: readonly string[];
  /** Null: nothing waits to be confirmed. */
  readonly waiting: string | null;
}

/** What a slip says, for whatever it is written on. */
export function wordSlip(plan: Plan, slip: Slip): SlipWords {
  if (slip.presence !== 'there') return { instead: SLIP[slip.presence], well: [], next: [], waiting: null };
  const next = slip.next.map((point) => sayNext(plan, point));
  const isAllWell = slip.waiting === 0 && next.length === 0 && slip.well.length > 0;
  return {
    instead: null,
    well: slip.well.map((point) => sayWell(plan, point)),
    next: isAllWell ? [SLIP.nothingNext] : next,
    waiting: slip.waiting > 0 ? SLIP.waiting : null,
  };
}

/** A slip as Markdown: a heading with the name, two short lists, and what still waits; ends with a line end. */
export function writeSlip(plan: Plan, slip: Slip): string {
  const { instead, well, next, waiting } = wordSlip(plan, slip);
  const lines = [`## ${nameSlip(plan, slip)}`, ''];
  if (instead !== null) return `${[...lines, instead].join('\n')}\n`;
  if (well.length > 0) lines.push(`**${SLIP.well}**`, '', ...well.map((line) => `- ${line}`), '');
  if (next.length > 0) lines.push(`**${SLIP.next}**`, '', ...next.map((line) => `- ${line}`), '');
  if (waiting !== null) lines.push(waiting, '');
  return `${lines.join('\n').trimEnd()}\n`;
}
