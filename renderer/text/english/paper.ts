import type { PackPart } from '../../../src-core/printing/pack.ts';
import { count, distance } from './amounts.ts';

/** What the parts of the print pack are called, and the files they are written to. */
export const PACK_NAMES: Readonly<Record<PackPart, { readonly title: string; readonly file: string }>> = {
  briefing: { title: 'Briefing', file: 'briefing' },
  key: { title: 'Route key', file: 'route-key' },
  answers: { title: 'Answer key', file: 'answer-key' },
  cards: { title: 'Station cards', file: 'station-cards' },
  clues: { title: 'Clue cards', file: 'clue-cards' },
  squads: { title: 'Squad sheets', file: 'squad-sheets' },
  labels: { title: 'Tablet labels', file: 'tablet-labels' },
};

/**
 * What counts as one, as a sentence for pupils: a text that ends in `: one`, as lists of exercises write it, would end
 * in a lone word on its card.
 */
export function sayCountsAs(text: string): string {
  const [, what] = /^(.+?)\s*:\s*one\.?$/is.exec(text.trim()) ?? [];
  if (what === undefined) return text;
  if (/^each\s/i.test(what)) return `${what} is one rep.`;
  return `One rep: ${what.charAt(0).toLowerCase()}${what.slice(1)}.`;
}

/** Everything that paper says of itself. */
export const PAPER = {
  station: (code: string) => `Station ${code}`,
  repsTogether: (reps: number) => (reps === 1 ? 'rep, all together' : 'reps, all together'),
  countsAs: {
    cycle: 'There and back again is one rep.',
    side: 'Each side is one rep: left and right make two.',
  },
  order: 'In this order',
  orderList: [
    'Film this card first.',
    'Stand the tablet so that everyone is in the picture. Keep filming.',
    'Count aloud. Stay together: wait for the slowest.',
  ] as readonly string[],
  /** The last line of the list, by how a squad knows where to go next. */
  walkOn: {
    clue: 'Stop filming. Read your clue card and walk on.',
    route: 'Stop filming. Look where your route goes on, and walk there.',
  },
  care: 'With care',
  careList: [
    'An arm’s length between you, and nothing in the way.',
    'Stop if something hurts or you feel dizzy, and tell your teacher. Stopping costs nothing.',
    'Ground wet or slippery? Wait for your teacher.',
  ],
  filmFirst: 'Film this card first',
  hold: (metres: number) =>
    `Hold the tablet no more than ${distance(metres)} away, and keep still while you count to three.`,
  codeSays: (station: string, lesson: string, revision: number) =>
    `The code says: station ${station}, ${lesson}, printing ${revision}.`,
  codeOpens: (address: string) => `It also opens the demonstration: ${address}`,
  easier: 'Easier:',
  harder: 'Harder:',

  clueAt: (place: string) => `At ${place}, when your film is done`,
  everySquad: 'For every squad',
  forSquads: 'For',
  onTheWay: 'On the way:',
  walk: 'Walk together. Nobody runs ahead.',
  clueEnd: 'Filmed at every station? Then go back to your teacher.',

  teacherOnly: 'For the teacher alone',
  slot: 'Slot',
  free: 'free',
  none: '–',
  notShown: 'Not to be filmed or shown',
  notShownNone: 'Nobody on the roster is on the do-not-film list.',
  notShownSentence:
    'Give them the tablet, the timekeeping or the counting. Routemark leaves their stills out of print and export.',
  keyEnd: 'Before class: let every tablet film the class clock once.',
  answersHead: {
    place: 'Station',
    exercise: 'Exercise',
    clue: 'Clue that leads here',
    equipment: 'To set out',
  },
  answersCount: (exercise: string, reps: number) => `${exercise}, ${count(reps, 'rep')}`,
  noClue: 'no clue yet',
  setting: { indoor: 'Indoors.', outdoor: 'Outdoors.' },
  settingKit: (setting: string, kit: string) => (kit === '' ? setting : `${setting} ${kit}`),

  continued: (title: string) => `${title}, continued`,
  objective: 'What it is for',
  words: 'Words to learn',
  rules: 'Rules',
  boundaries: 'Boundaries',
  cautions: 'With care, today',
  usual: 'With care, always',
  usualList: [
    'Warm up first; cool down after.',
    'Space: an arm’s length on every side before anything begins.',
    'Pain, dizziness, trouble breathing: stop, sit, tell an adult. Stopping outranks any count and costs no mark.',
    'Exempt or adapted: the easier form, timekeeping or filming is full part. Nobody is asked why.',
    'Supervision: every station in somebody’s sight; one agreed signal that stops everything.',
    'Ground, kit and footwear looked at before class. Wet, loose or uneven: move the station.',
    'Heat and sun: shade, water, shorter work, and no circuit at all when your local rule says so.',
    'Water within reach at every change of station.',
  ],
  policy:
    'Your school’s policy and your local code of safe practice come first, on exercise and on filming pupils. Medical questions go to licensed staff. These are reminders, not advice.',
  stationCaution: (place: string, caution: string) => `${place}: ${caution}`,
  wordMeaning: (word: string, meaning: string) => `${word}: ${meaning}`,

  begin: 'Begin at',
  pinnie: (pinnie: string) => `Pinnie: ${pinnie}`,
  squadLine: (pinnie: string, tablet: string) => `Pinnie: ${pinnie}. Tablet: ${tablet}.`,
  pupils: 'Squad',
  films: 'Films at stop',
  filmsHint:
    'Take turns: cross one box for each stop, or stand the tablet up so that all are in the picture.',
  noPupils: 'Nobody on the roster yet: write the names here.',
  stops: 'Where we were',
  stopsHint: 'At each stop write the letter on its card.',
  route: 'Your route, from the top down',
  walkedBy: 'Your route',
  routeHint: 'From left to right; the places are on your other page.',
  routeEnd: 'Tick a place when your film is done. All ticked? Then go back to your teacher.',
  squadEnd: 'Stay together, keep the tablet dry, and come back with everything you took.',
  labelEnd: 'Film the class clock once before you begin.',
} as const;
