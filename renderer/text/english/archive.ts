import type { ArchiveProblem } from '../../../src-core/lesson-file/archive-manifest.ts';
import { count, list, size } from './amounts.ts';
import type { Wordings } from './wordings.ts';

const NOTHING_RESTORED = 'Nothing was restored.';

/** Names beyond this many are counted. */
const MOST_NAMES = 3;

function nameFiles(files: readonly string[]): string {
  if (files.length <= MOST_NAMES) return list(files);
  return list([...files.slice(0, MOST_NAMES), `${files.length - MOST_NAMES} more`]);
}

const LEFT_OUT = {
  link: (path: string) => ({
    what: `${path} leads elsewhere and is not in the archive.`,
    todo: 'Keep what it leads to by itself.',
  }),
  name: (path: string) => ({
    what: `${path} has a name that no archive can hold, and is not in it.`,
    todo: 'Give it a plain name and make the archive again.',
  }),
  outside: (path: string) => ({
    what: `The clips lie in ${path}, outside the lesson, and are not in the archive.`,
    todo: 'Keep that folder by itself.',
  }),
};

/** Words for archives that were not made, or not restored. */
export const archiveProblems: Wordings<ArchiveProblem['code']> = {
  'archive-within-lesson': ({ path }) => ({
    what: `${path} lies in the lesson folder itself, and would go with it.`,
    todo: 'Put the archive on another disk, or at least into another folder.',
  }),
  'archive-exists': ({ path }) => ({
    what: `${path} is there already. No archive was made.`,
    todo: 'Choose another name.',
  }),
  'archive-left-out': ({ path, why }) => LEFT_OUT[why](path),
  'archive-not-ours': ({ path }) => ({
    what: `${path} is not an archive of a lesson.`,
    todo: 'Choose the .zip that Routemark made of one.',
  }),
  'archive-newer': ({ path, version, newest }) => ({
    what: `${path} was made by a newer Routemark (format ${version}; this one reads up to ${newest}).`,
    todo: 'Install the newer version.',
  }),
  'archive-cut-short': ({ path }) => ({
    what: `${path} is cut short: its end is missing, where it says what it holds. ${NOTHING_RESTORED}`,
    todo: 'Copy the archive again from where it was first, or take another copy.',
  }),
  'archive-damaged': ({ path, files, whole }) => ({
    what: `${path} is damaged: not what was put in ${files.length === 1 ? 'is' : 'are'} ${nameFiles(files)}. ${whole === 1 ? '1 other file is' : `${whole} other files are`} whole.`,
    todo: 'Copy the archive again from where it was first, or take another copy; or restore what is whole.',
  }),
  'archive-unsafe': ({ path, name }) => ({
    what: `${path} holds “${name}”, a name that no archive of a lesson has. ${NOTHING_RESTORED}`,
    todo: 'Do not trust this archive; ask whoever gave it to you.',
  }),
  'restore-place-taken': ({ path }) => ({
    what: `There is something at ${path} already. ${NOTHING_RESTORED}`,
    todo: 'Name a folder that is not there yet, or an empty one.',
  }),
};

/** What is said of archives that were made and restored. */
export const ARCHIVE = {
  keepShort: 'Back up',
  keepTitle: (title: string) => `Back up ${title}`,
  keepText:
    'One archive of the whole lesson, read back and compared. Put it on another disk; a lesson folder can be made of it on any machine.',
  clipsToo: 'Clips too: pupils’ video, to be kept as your school’s policy says',
  keep: 'Back up this lesson',
  leftOut: 'The archive was made without this',
  working: (done: number, total: number) => `Writing and checking, ${done} of ${count(total, 'file')}`,
  workingShort: 'Writing and checking',
  stop: 'Stop',
  from: 'Restore from an archive…',
  fromTitle: 'Restore a lesson from an archive',
  fromText:
    'It is unpacked beside its archive, into a new folder of its name, once every file in it was checked.',
  noArchives: 'There is no archive of a lesson in this folder.',
  unusable: 'Nothing can be restored of this',
  inPart: 'Restored in part',
  wholeOnly: 'Restore what is whole',
  openPart: 'Open the lesson as it is',
  clipsInside: 'with clips',
  clipsOutside: 'without clips',
  made: (path: string, files: number, bytes: number) =>
    `${path}: ${count(files, 'file')}, ${size(bytes)}, read back and compared.`,
  withoutClips: 'Clips are not in it; stills of pupils that were cut for the strips are.',
  withClips:
    'It holds pupils’ video: keep it as your school’s policy says, and delete it when the lesson’s day is over.',
  restored: (title: string, className: string, files: number) =>
    `${title}, ${className}: ${count(files, 'file')}, every one as it was put in.`,
  restoredInPart: (title: string, className: string, files: number) =>
    `${title}, ${className}: ${count(files, 'file')} that ${files === 1 ? 'is' : 'are'} whole.`,
} as const;
