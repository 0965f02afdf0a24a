import type { PrintProblem } from '../../../src-core/printing/print-problem.ts';
import type { Wordings } from './wordings.ts';

/** Places of words that are not the plan's. */
const ELSEWHERE = /^(roster|marks\.jsonl|clip|flag|slip)\b/;

const WHERE = (field: string) => (ELSEWHERE.test(field) ? field : `plan.json, ${field}`);

/** Words for what kept something off the paper. */
export const printProblems: Wordings<PrintProblem['code']> = {
  'print-text-too-long': ({ field, text }) => ({
    what: `${WHERE(field)}: “${text}” is too long for its place on paper. That page was left out.`,
    todo: 'Say it in fewer words, and print again.',
  }),
  'print-letters-missing': ({ field, letters }) => ({
    what: `${WHERE(field)}: the fonts have no ${letters}. There is an empty line instead.`,
    todo: 'Write it in by hand, or spell it in Latin, Greek or Cyrillic letters.',
  }),
  'print-clue-missing': ({ station }, names) => ({
    what: `No clue leads to ${names.station(station)}; it has no clue card.`,
    todo: 'Write the clue into the plan, or tell the squads where to go.',
  }),
  'print-photo-missing': ({ station, path }, names) => ({
    what: `${names.station(station)}: there is no picture ${path} that can be read. Its place on the answer key is empty.`,
    todo: 'Put the picture there, or name another one.',
  }),
  'print-stills-missing': ({ clip }, names) => ({
    what: `${names.clip(clip)}: not all of its stills could be made. Their places on the sheet are empty.`,
    todo: 'Look whether the clip still lies where it was, and whether ffmpeg is here; then print again.',
  }),
  'print-empty': () => ({
    what: 'There was no page to print.',
    todo: 'Choose other parts of the pack, or mend what is said beside this; then print again.',
  }),
};
