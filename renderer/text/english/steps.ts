import type { Progress } from '../../../src-core/contract/progress.ts';

/** What is being done, by step of a long piece of work. */
export const stepWords: Readonly<Record<Progress['step'], string>> = {
  read: 'Reading stamps',
  cards: 'Looking at clips',
  watch: 'Watching clips',
  count: 'Counting reps',
  copy: 'Copying and checking',
  film: 'Filming',
  proxy: 'Making a film that this window plays',
  stills: 'Cutting stills',
  print: 'Laying out pages',
  compare: 'Comparing with the tablet',
  figures: 'Adding up lessons',
};
