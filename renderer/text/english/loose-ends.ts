import type { LooseEnd } from '../../../src-core/lesson/lesson-problem.ts';
import type { Wordings } from './wordings.ts';

/** What is still to be filled in before class, as a sentence and what to do. */
export const looseEnds: Wordings<LooseEnd['code']> = {
  'plan-place-blank': ({ station }) => ({
    what: `Station ${station} has no place yet.`,
    todo: 'Name where it is.',
  }),
  'plan-exercise-blank': ({ station }) => ({
    what: `Station ${station} has no exercise yet.`,
    todo: 'Choose one, or write your own.',
  }),
  'plan-caution-blank': ({ station }) => ({
    what: `Station ${station} has no caution of its own.`,
    todo: 'Say what to take care of there.',
  }),
  'plan-words-left-over': ({ station, exercise }) => ({
    what: `Station ${station} is still counted, timed and cautioned as “${exercise}”.`,
    todo: 'Say how a rep of your own exercise counts, how long it takes and what to take care of.',
  }),
  'plan-station-on-no-route': ({ station }) => ({
    what: `No squad comes to station ${station}.`,
    todo: 'Have the squads rotated anew, or leave it out today.',
  }),
  'plan-class-empty': () => ({ what: 'No pupil is in the class yet.', todo: 'Take your class list over.' }),
  'plan-squad-empty': ({ squad }, names) => ({
    what: `Nobody is in squad ${names.squad(squad)}.`,
    todo: 'Form squads, or take it out.',
  }),
};
