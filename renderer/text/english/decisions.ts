import type { JournalDecision } from '../../../src-core/marking/journal-event.ts';
import type { FlagCode } from '../../../src-core/matching/flag.ts';
import type { Names } from '../names.ts';
import { count, span } from './amounts.ts';
import { nameFlag } from './flags.ts';

type Words = {
  readonly [Kind in JournalDecision['kind']]: (
    decision: Extract<JournalDecision, { kind: Kind }>,
    names: Names,
  ) => string;
};

const WORDS: Words = {
  'station-set': ({ clip, station }, names) =>
    station === null
      ? `${names.clip(clip)} without a station named`
      : `${names.clip(clip)} at ${names.station(station)}`,
  'clip-moved': ({ clip, squad }, names) =>
    squad === null
      ? `${names.clip(clip)} back to its folder`
      : `${names.clip(clip)} to ${names.squad(squad)}`,
  'clip-placed': ({ clip, slot }, names) => {
    if (slot === null) return `${names.clip(clip)} placed by itself again`;
    return slot === 'none' ? `${names.clip(clip)} set aside` : `${names.clip(clip)} into slot ${slot + 1}`;
  },
  'clock-set': ({ squad, correctionSeconds }, names) =>
    `${names.squad(squad)}’s clock ${correctionSeconds === null ? 'as found' : `by ${span(correctionSeconds)}`}`,
  'criterion-marked': ({ clip }, names) => `a criterion of ${names.clip(clip)}`,
  'clip-confirmed': ({ clip }, names) => `${names.clip(clip)} confirmed`,
  'clip-noted': ({ clip }, names) => `the note on ${names.clip(clip)}`,
  'lanes-set': ({ clip, lanes }, names) =>
    lanes === null
      ? `the performers of ${names.clip(clip)} as estimated`
      : `${count(typeof lanes === 'number' ? lanes : lanes.length, 'performer')} in ${names.clip(clip)}`,
  'flag-settled': ({ flag, settled }) => {
    const name = nameFlag(flag.split(':')[0] as FlagCode) ?? flag;
    return `${name} ${settled ?? 'opened again'}`;
  },
  'squad-marked': ({ squad }, names) => `a criterion of ${names.squad(squad)}`,
  'attendance-set': ({ attendance }) => `attendance${attendance === null ? '' : `: ${attendance}`}`,
  'points-overridden': ({ change }) => (change === null ? 'points as computed' : 'points changed by hand'),
};

/** A decision in a few words, for undo and redo. */
export function describeDecision(decision: JournalDecision, names: Names): string {
  const word = WORDS[decision.kind] as (decision: JournalDecision, names: Names) => string;
  return word(decision, names);
}
