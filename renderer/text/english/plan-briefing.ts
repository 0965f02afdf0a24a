/** All that the briefing says, with the usual cautions to choose from. */
export const BRIEFING = {
  head: 'Say at the start',
  objective: 'Objective',
  objectiveHint: 'what the class is to learn today',
  words: 'Words to learn',
  wordLabel: (at: number) => `Word ${at}`,
  meaningLabel: (word: string) => `What “${word}” means`,
  wordHint: 'a word',
  meaningHint: 'what it means',
  lists: {
    rules: { head: 'Rules', hint: 'a rule', label: (at: number) => `Rule ${at}` },
    boundaries: {
      head: 'Boundaries',
      hint: 'how far anyone may go',
      label: (at: number) => `Boundary ${at}`,
    },
    cautions: { head: 'Cautions', hint: 'a caution', label: (at: number) => `Caution ${at}` },
  },
  usual: 'Usual cautions, to take over',
  policy:
    'Your school’s policy and your local code of safe practice come first; medical questions go to licensed staff.',
} as const;

/** Cautions that are usual for a circuit; common practice, and never a replacement for the school's own. */
export const USUAL_CAUTIONS: readonly string[] = [
  'Warm up first.',
  'Keep an arm’s length to each side, more for hops and swings.',
  'Stop on pain or dizziness, and tell me.',
  'Exempt or adapted: do the task we agreed on.',
  'Stay where I can see you.',
  'Check ground and shoes: dry, level, laces tied.',
  'Drink when you need to; on hot days, rest in the shade.',
  'Walk between stations; nobody is timed.',
];
