import { count, list } from './amounts.ts';

/** All that is said around the kinds of hand-in that are printed. */
export const PAPER_KIND = {
  holds: 'What is printed',
  gradePages: (squads: number) => [
    'One page for the class: every squad’s route and walk, every pupil’s mark in the roster’s order.',
    `Then ${count(squads, 'squad')}, each on a page of its own or more: clips in the order filmed, one still a rep, answers, points, notes, and a line to sign.`,
  ],
  stillsLabel: 'Stills',
  stills: { blurred: 'blurred', shown: 'shown', 'left-out': 'no stills' },
  stillsSay: {
    blurred: 'Stills are blurred so that nobody can be known again; the sharp picture is not in the file.',
    shown: 'Stills are shown as they were filmed. Whoever has the file can see who is in them.',
    'left-out': 'No stills.',
  },
  unshown: (squads: readonly string[]) =>
    `None of ${list(squads)}: a pupil there is on the do-not-film list or has no consent.`,
  slips: 'The slips, word for word',
  slipCount: (slips: number, of: 'squads' | 'pupils') =>
    `${count(slips, 'slip')} for ${of}, from what you have confirmed. No points stand on them, and they are not recorded as marks handed in.`,
  cutting: (done: number, total: number) => `Cutting stills, ${done} of ${count(total, 'clip')}`,
  drawing: 'Drawing the pages',
  stop: 'Stop',
  printed: (path: string, pages: number) => `Printed: ${path}, ${count(pages, 'page')}`,
} as const;
