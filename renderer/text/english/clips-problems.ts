import type { ClipsProblem } from '../../../src-core/contract/clips-problem.ts';
import type { ForeignCode } from '../../../src-core/evidence/card-vote.ts';
import type { EvidenceProblem } from '../../../src-core/evidence/evidence-problem.ts';
import type { MediaProblem } from '../../../src-core/media/media-problem.ts';
import type { Advice, Names } from '../names.ts';
import { list, span } from './amounts.ts';
import { BRING_IN } from './bring-in.ts';
import { describeStampProblem } from './stamps.ts';
import type { Wordings } from './wordings.ts';

const COPY_AGAIN = 'Copy it again while the tablet is here.';

const FOREIGN: Readonly<Record<ForeignCode['kind'], string>> = {
  'not-ours': 'a code that is no card of ours',
  'other-lesson': 'a card of another lesson',
  'other-revision': 'a card of another printing',
  'unknown-station': 'a card of a station that this plan does not have',
};

const folderProblems: Wordings<Exclude<ClipsProblem['code'], 'cards-not-searched'>> = {
  'films-deleted': ({ at }) => ({
    what: `The clips of this lesson were deleted on ${at.slice(0, 10)}, and marks cannot be worked out without them.`,
    todo: 'What was handed in before stands in its files; from a backup the clips can be brought in again.',
  }),
  'path-missing': ({ path }) => ({
    what: `There is nothing at ${path}.`,
    todo: 'Plug the tablet or stick in again, or choose another folder.',
  }),
  'clips-folder-missing': ({ path }) => ({
    what: `There is no folder of clips at ${path}.`,
    todo: 'Bring the squads’ folders in, or read them in place where they lie.',
  }),
  'folder-without-clips': ({ path }) => ({
    what: `There is no clip in ${path}.`,
    todo: BRING_IN.noClipsThereTodo,
  }),
  'folder-unreadable': ({ path }) => ({
    what: `The folder ${path} cannot be opened.`,
    todo: 'Ask for the right to read it, or copy it elsewhere.',
  }),
  'folder-too-deep': ({ path }) => ({
    what: `${path} lies too deep and was not entered.`,
    todo: 'Move it a few folders up and bring it in again.',
  }),
  'link-not-followed': ({ path }) => ({
    what: `${path} is a link and was not followed.`,
    todo: 'Put the clip itself there.',
  }),
  'file-not-a-clip': ({ path }) => ({ what: `${path} is no clip and was left alone.`, todo: null }),
  'file-vanished': ({ path }) => ({
    what: `${path} went away while it was read.`,
    todo: 'Read the clips again.',
  }),
  'file-unreadable': ({ path }) => ({ what: `${path} cannot be opened.`, todo: COPY_AGAIN }),
  'clip-of-nobody': ({ path, reason }) => ({
    what:
      reason === 'no-squad-named'
        ? `${path} waits: no folder on its way names a squad.`
        : `${path} waits: its folders name more than one squad.`,
    todo: 'Say whose it is at Bring in, or name its folder by the squad’s name, pinnie colour or tablet.',
  }),
  'same-clip-twice': ({ squad, paths }, names) => ({
    what: `${names.squad(squad)} handed in one clip under several names: ${list(paths)}. It counts once.`,
    todo: null,
  }),
  'squad-without-clips': ({ squad }, names) => ({
    what: `${names.squad(squad)} has no clip in this lesson.`,
    todo: 'Look whether its folder is missing, its tablet’s clock is wrong, or the plan names another day.',
  }),
  'clock-unchecked': ({ squad, uncertaintySeconds }, names) => ({
    what: `${names.squad(squad)}’s tablet never filmed the class clock; its times may be off by ${span(uncertaintySeconds)}.`,
    todo: null,
  }),
  'clock-films-disagree': ({ squad, clips }, names) => ({
    what: `${names.squad(squad)}’s films of the class clock disagree: ${list(clips.map(names.clip))} tell another time.`,
    todo: 'Set this tablet’s clock correction by hand if the times look wrong.',
  }),
  'stamp-odd': ({ path, problem }) => ({ what: `${path}: ${describeStampProblem(problem)}`, todo: null }),
  'card-foreign': ({ path, text, kind }) => ({
    what: `${path} shows ${FOREIGN[kind]} (“${text}”); it was ignored.`,
    todo: null,
  }),
  'card-odd': ({ path, problem }) => ({
    what:
      problem.code === 'clock-card-stands'
        ? `${path} shows the class clock standing still, as in a photo of it; it was not used.`
        : `${path} shows the cards of ${list(problem.stations.map(({ code }) => code))}.`,
    todo:
      problem.code === 'cards-disagree' && problem.taken === null ? 'Choose its station at Line up.' : null,
  }),
};

const mediaProblems: Wordings<MediaProblem['code']> = {
  'media-empty': () => ({ what: 'The file is empty.', todo: COPY_AGAIN }),
  'media-unknown-kind': () => ({
    what: 'This is no video of a kind that Routemark reads (MP4, MOV, MKV, WebM, AVI), whatever its name says.',
    todo: 'Hand in the clip itself, or export it on the tablet as MP4.',
  }),
  'media-cut-short': () => ({ what: 'The file ends in the middle.', todo: COPY_AGAIN }),
  'media-no-index': () => ({ what: 'The recording was never closed.', todo: COPY_AGAIN }),
  'media-malformed': ({ part, at }) => ({
    what: `The file is damaged (${part}, at byte ${at}).`,
    todo: COPY_AGAIN,
  }),
  'media-version-unsupported': ({ part, version }) => ({
    what: `The file has a part (${part}) of an unknown version (${version}).`,
    todo: 'Export it on the tablet as MP4 or MOV.',
  }),
  'media-reading-limit': () => ({
    what: 'The file has more parts than any camera writes.',
    todo: 'Export it on the tablet as MP4 or MOV.',
  }),
  'media-no-picture': () => ({ what: 'The file holds no picture.', todo: 'Hand in the clip itself.' }),
};

const lookProblems: Wordings<EvidenceProblem['code']> = {
  'ffmpeg-missing': () => ({
    what: 'No ffmpeg was found, so no card could be read.',
    todo: 'Install ffmpeg and start Routemark again. Films play and marking goes on without it.',
  }),
  'decode-failed': ({ detail }) => ({
    what: `No picture of it can be shown${detail === '' ? '' : ` (${detail})`}.`,
    todo: 'Copy it again while the tablet is here; a photo is best handed in as JPEG.',
  }),
  'decode-cut-short': ({ lastSeconds }) => ({
    what: `Its pictures end at ${span(lastSeconds)}, before its time.`,
    todo: COPY_AGAIN,
  }),
  'decode-interrupted': ({ detail }) => ({
    what: `Looking at its pictures was broken off from outside${detail === '' ? '' : ` (${detail})`}.`,
    todo: 'Read the clips again. If it happens again, close other programs, or copy the clip onto this computer first.',
  }),
  'decode-timed-out': ({ limitSeconds }) => ({
    what: `Looking for cards took longer than ${span(limitSeconds)} and was stopped.`,
    todo: 'Read the clips again when the machine is less busy.',
  }),
  'decode-cancelled': () => ({ what: 'Looking for cards was stopped.', todo: null }),
  'analysis-failed': ({ detail }) => ({
    what: `Looking at it broke off (${detail}).`,
    todo: 'Read the clips again; the others are not touched.',
  }),
  'card-reader-failed': ({ detail }) => ({
    what: `The reader of codes did not start (${detail}).`,
    todo: 'Install Routemark again.',
  }),
};

/** One failure of the search, however many clips it was met in. */
const searchProblems: Wordings<'cards-not-searched'> = {
  'cards-not-searched': ({ paths, problem }, names) => {
    const word = lookProblems[problem.code] as (of: EvidenceProblem, names: Names) => Advice;
    const { what, todo } = word(problem, names);
    return { what: `${what} Not searched for cards: ${describePaths(paths)}.`, todo };
  },
};

function describePaths(paths: readonly string[]): string {
  return paths.length > 3 ? `${paths.length} clips, ${paths[0]} the first` : list(paths);
}

/** Words for what is met among the clips. */
export const clipsProblems: Wordings<(ClipsProblem | MediaProblem | EvidenceProblem)['code']> = {
  ...folderProblems,
  ...mediaProblems,
  ...lookProblems,
  ...searchProblems,
};
