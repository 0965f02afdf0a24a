import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Advice, Names } from '../names.ts';
import { describeProblem } from './problems.ts';

/** What is to be done at a command line, where it differs from what a person at the window does. */
const TODO: Readonly<Partial<Record<Problem['code'], string>>> = {
  'path-missing': 'Check the path.',
  'clips-folder-missing': 'Put one folder per squad into “clips”, or name the folder with --clips.',
  'file-vanished': 'Run again.',
  'clip-of-nobody': 'Name its folder by the squad’s name, pinnie colour or tablet.',
  'ffmpeg-missing': 'Install ffmpeg, or set ROUTEMARK_FFMPEG to its path.',
  'decode-interrupted':
    'Run again. If it happens again, close other programs, or copy the clip onto this computer first.',
  'decode-timed-out': 'Run again when the machine is less busy.',
  'analysis-failed': 'Run again; the other clips are not touched.',
  'queue-engine-missing': 'Run “npm install bullmq ioredis” in Routemark’s folder, or leave --queue out.',
  'disk-too-small': 'Make room, or read the clips where they lie with --clips.',
  'file-exists': 'Choose another name, or write over it with --replace.',
  'archive-damaged':
    'Copy the archive again from where it was first, or take another copy; or restore the whole files alone with --whole-files.',
  'routes-not-found': 'Allow a leg, draw again with another --seed, or take the other --design.',
  'squads-not-found': 'Take a rule back, or draw again with another --seed.',
  'import-column-missing': 'Say which column it is with --columns "id=…,given=…,family=…".',
  'import-class-open': 'Say which one with --class.',
  'import-class-unknown': 'Name one of its classes with --class.',
  'version-unknown': 'Name one that “plan versions” lists.',
  'card-odd': 'Look at the clip, and say where it was filmed with “mark --station”.',
  'clock-films-disagree': 'Say what the tablet’s clock lacks with “mark --clock”.',
  'bundle-class-open': 'Say which one with --class.',
  'bundle-category-unknown': 'Name one of its categories, or leave --category out.',
  'bundle-result-left-out':
    'Enter it by hand, or write --to oneroster where the gradebook reads version 1.2.',
  'hand-in-flags-open':
    'Settle the flags, or add --with-open-flags: the sheet will say that it is not final.',
};

/** What happened and what to do about it, for a person at a command line. */
export function describeTypedProblem(problem: Problem, names: Names): Advice {
  const said = describeProblem(problem, names);
  const todo = TODO[problem.code === 'cards-not-searched' ? problem.problem.code : problem.code];
  return said.todo === null || todo === undefined ? said : { ...said, todo };
}
