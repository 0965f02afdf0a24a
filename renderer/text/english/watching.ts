import { count } from './amounts.ts';

/** What is said about watching many lessons' clips, here or by workers. */
export const WATCHING = {
  clips: (clips: number) => count(clips, 'clip'),
  watched: (watched: number, now: number) => `${watched} watched whole, ${now} of them now`,
  passedOver: (clips: number) => `${clips} passed over`,
  failed: (clips: number) => `${clips} could not be watched`,
  unopened: 'could not be opened',
  noWorker:
    'No worker is at this queue yet. Start one with “routemark work FOLDERS --queue …”; this one waits.',
  atWork: 'At work. Ctrl-C ends it; what is under way goes to another worker.',
  silence: 'The queue does not answer; waiting for it.',
  unfit: (reason: string) => `A clip could not be watched here: ${reason}. No other is taken for a while.`,
  done: (clip: string) => `done  ${clip}`,
  ended: (jobs: number, failed: number) =>
    `${count(jobs, 'piece')} of work done${failed === 0 ? '' : `, ${failed} with problems`}.`,
} as const;
