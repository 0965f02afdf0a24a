/** An invented class: id, given and family name of each pupil. */
export const PUPILS = ['Odda', 'Bram', 'Junip', 'Milo', 'Ansa', 'Tove', 'Isko', 'Fenn'].flatMap(
  (given, row) =>
    ['Quillfeather', 'Sandlark', 'Fogbottom'].map((family, column) => [`k-${row}${column}`, given, family]),
);

/** A circuit as a teacher types it; `exercise` is what finds one in the library. */
export const STATIONS = [
  { place: 'Rope Store', clue: 'Coiled, and hung up dry', exercise: 'squat', reps: '8' },
  { place: 'Tide Post', clue: 'It writes its height on wood', exercise: 'shuffle', reps: '12' },
  { place: 'Gull Wall', clue: 'Birds queue without a ticket', exercise: 'wall', reps: '6' },
  { place: 'Crane Square', clue: 'It never lifts its feet', exercise: 'toe taps', reps: '14' },
  { place: 'Buoy Yard', clue: 'Resting from the sea', exercise: 'plank', reps: '10' },
  { place: 'Slipway Bench', clue: 'Sit where boats slide in', exercise: 'step-ups', reps: '8' },
];
