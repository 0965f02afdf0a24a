/** All that the briefing says. */
export const BRIEFING = {
  head: 'Briefing',
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
  usual: 'Printed on every briefing:',
  policy:
    'Your school’s policy and your local code of safe practice come first; medical questions go to licensed staff.',
} as const;
