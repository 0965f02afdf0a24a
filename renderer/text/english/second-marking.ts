import { count } from './amounts.ts';

const YES_NO = (is: boolean) => (is ? 'yes' : 'no');

/** All that is said around marking the same clips a second time. */
export const SECOND = {
  page: 'Second marking',
  sentence: 'Was marking fair? The same clips marked again, blind, and how far the two agree.',
  asking: 'Looking…',
  markers: 'Mark again',
  why: 'By a colleague, or by yourself some days later. None of the marks, notes or points that stand now are shown, and none of them changes.',
  who: 'Who marks',
  whoHint: 'a name',
  begin: 'Mark blind',
  both: (amount: number) => `${amount} marked by both`,
  compare: 'Compare',
  compareLabel: (who: string) => `Compare with ${who}’s`,
  goOn: 'Go on marking',
  goOnLabel: (who: string) => `Go on marking as ${who}`,
  agreement: 'How far the two agree',
  subject: 'What',
  notDefined: '–',
  figures:
    'Kappa takes away what chance would give; linear and quadratic count a near miss as less than a wide one; ICC(2,1) compares points. A dash: not defined. Only decisions are compared, never what the machine proposed.',
  talk: 'To talk about',
  talkCount: (amount: number) => count(amount, 'difference'),
  said: (criterion: string, first: boolean, second: boolean) =>
    `${criterion}: ${YES_NO(first)} first, ${YES_NO(second)} second`,
  show: 'Watch',
  showLabel: (clip: string) => `Watch ${clip}`,
  strip: (who: string) => `Second marking by ${who}. The first marks are hidden.`,
  back: 'Back to the lesson',
} as const;
