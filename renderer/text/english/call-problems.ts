import type { CallProblem } from '../../../src-core/contract/call-problem.ts';
import type { Wordings } from './wordings.ts';

const SAFE = 'Everything decided before is safe.';

/** Words for requests that a window makes and that were not carried out. */
export const callProblems: Wordings<CallProblem['code']> = {
  'call-unknown': ({ name }) => ({
    what: `This window asked for something (${name}) that the program does not know.`,
    todo: 'Close the window and open it again: the program was probably updated meanwhile.',
  }),
  'call-malformed': ({ name, path }) => ({
    what: `This window asked in a way that was not understood (${[name, path].filter(Boolean).join(', ')}).`,
    todo: `Close the window and open it again. ${SAFE}`,
  }),
  'call-cancelled': () => ({ what: 'Stopped. What was finished before stays.', todo: null }),
  'program-fault': ({ trace }) => ({
    what: `Something went wrong in the program itself (trace ${trace}).`,
    todo: `Try again; if it happens again, report it with this trace. ${SAFE}`,
  }),
  'desk-unreachable': () => ({
    what: 'The program behind this window does not answer.',
    todo: `Start Routemark again; this window goes on where it was. ${SAFE}`,
  }),
  'folder-unknown': () => ({ what: 'This folder is not known any more.', todo: 'Choose it again.' }),
  'no-folder-dialog': () => ({
    what: 'This window cannot show the system’s folder dialog.',
    todo: 'Choose the folder from the list instead.',
  }),
  'lesson-unknown': () => ({
    what: 'This lesson is not open here.',
    todo: 'Choose its folder again.',
  }),
  'second-marking-only': () => ({
    what: 'A second marking holds answers, notes and squad marks alone.',
    todo: 'Go back to the lesson itself for all else.',
  }),
  'marker-name-bad': () => ({
    what: 'This is no name for a second marker.',
    todo: 'Write letters or digits.',
  }),
  'lesson-away': ({ path }) => ({
    what: `The lesson’s folder ${path} is not there now: its stick or network drive is away.`,
    todo: 'Plug it in again. What you decide meanwhile is kept in this window and written when it is back.',
  }),
  'lesson-open-elsewhere': () => ({
    what: 'This lesson is open in another Routemark.',
    todo: 'Go on in that window, or close it first.',
  }),
  'clips-unread': () => ({
    what: 'The clips of this lesson have not been read yet.',
    todo: 'Wait until they are read.',
  }),
  'clip-unknown': ({ clip }, names) => ({
    what: `The clip ${names.clip(clip)} is not in this lesson any more.`,
    todo: 'Read the clips again.',
  }),
  'pupil-unknown': ({ pupil }) => ({
    what: `There is no pupil “${pupil}” in roster.csv.`,
    todo: 'Look at the roster again.',
  }),
  'lesson-busy': () => ({
    what: 'Clips of this lesson are being read or watched, which leaves files.',
    todo: 'Wait until that is done, or stop it, then look again.',
  }),
  'holdings-changed': () => ({
    what: 'What would go is no longer what the list shows. Nothing was deleted.',
    todo: 'Look at the list again, then delete.',
  }),
  'decision-meaningless': ({ path }) => ({
    what: `A decision was not recorded: what it is about (${path}) is not in this lesson.`,
    todo: 'Look at the clip or pupil again and decide once more.',
  }),
  'plan-changed-elsewhere': () => ({
    what: 'The plan was changed elsewhere since this edit began. Nothing was written.',
    todo: 'Look at the plan as it is now and make the edit again.',
  }),
  'roster-changed': () => ({
    what: 'The roster or the class list is no longer what was shown. Nothing was written.',
    todo: 'Look at the changes again, then take them in.',
  }),
  'sheet-changed': () => ({
    what: 'The sheet would no longer be the one in the preview. Nothing was written.',
    todo: 'Look at the preview again, then write.',
  }),
  'file-name-bad': ({ path }) => ({
    what: `${path} is no name for a file.`,
    todo: 'Use letters, digits, spaces, hyphens and points.',
  }),
  'file-exists': ({ path }) => ({
    what: `${path} is there already. Nothing was written.`,
    todo: 'Choose another name, or say that it may be replaced.',
  }),
  'upload-differs': ({ path }) => ({
    what: `${path} did not arrive whole and was taken away.`,
    todo: 'Drop the folder again; what has arrived is passed over.',
  }),
  'demo-failed': ({ reason }) => ({
    what: `The demo lesson could not be filmed (${reason}).`,
    todo: 'Free disk space or install ffmpeg, then try again.',
  }),
};
