import type { ShelvedExercise } from '../../../src-core/lesson/library/library.ts';
import { count } from './amounts.ts';

/** What room an exercise takes. */
const SPACES: Readonly<Record<ShelvedExercise['space'], string>> = {
  standing: 'on the spot',
  wide: 'with room around',
  lying: 'on the ground',
  wall: 'at a wall',
};

/** All that the list of stations says. */
export const STATIONS = {
  head: 'Stations',
  sentence: (stations: number) => count(stations, 'station'),
  add: 'Station',
  place: 'Place, and the clue that leads there',
  exercise: 'Exercise, and how a rep is counted',
  reps: 'Reps',
  care: 'With care',
  details: (code: string) => `Everything about station ${code}`,
  placeOf: (code: string) => `Place of ${code}`,
  exerciseOf: (code: string) => `Exercise at ${code}`,
  repsOf: (code: string) => `Reps at ${code}`,
  choosePlace: 'name the place',
  chooseExercise: 'type to find an exercise',
  counting: { cycle: 'one per cycle', side: 'one per side' },
  tempo: (from: number, to: number) => `${from}–${to} s`,
  countingLabel: 'Counted',
  tempoLabel: 'One full cycle takes',
  tempoWords: ['', 'to', 'seconds'],
  shortest: 'Shortest cycle in seconds',
  longest: 'Longest cycle in seconds',
  fieldOf: (label: string, code: string) => `${label}, station ${code}`,
  fields: {
    clue: { label: 'Clue', hint: 'a clue that leads here' },
    caution: { label: 'With care', hint: 'a caution' },
    countsAs: { label: 'One rep is', hint: 'when a rep counts, in the pupils’ words' },
    easier: { label: 'Easier', hint: 'for whoever needs it easier' },
    harder: { label: 'Harder', hint: 'for whoever wants more' },
    equipment: { label: 'Must stand there', hint: 'cones, a mat, a bench' },
    transit: { label: 'On the way here', hint: 'such as one lap' },
    demonstration: { label: 'Demonstration', hint: 'a web address, for the card' },
    photo: { label: 'Reference photo', hint: 'a picture’s name in the folder “photos”' },
  },
  settingLabel: 'In or out',
  setting: { indoor: 'indoors', outdoor: 'outdoors', either: 'either' },
  letter: 'Letter on the card',
  up: 'Move up',
  down: 'Move down',
  remove: (code: string) => `Take station ${code} out`,
  moveKeys: 'Alt with an arrow moves the row.',
  exerciseLine: ({ muscles, space, countsAs, from }: ShelvedExercise) =>
    `${muscles}, ${SPACES[space]}${from === 'own' ? ', your own' : ''} · ${countsAs}`,
} as const;

/** The teacher's own exercises, below the stations. */
export const LIBRARY = {
  take: 'Your own exercises (exercises.json):',
  own: (exercises: number) => `${count(exercises, 'exercise')} of your own`,
  forget: 'Forget mine',
} as const;
