import type { ReasonCode, ReasonOf } from '../../../src-core/marking/proposal.ts';
import type { Names } from '../names.ts';

const WORDINGS: { readonly [Code in ReasonCode]: (reason: ReasonOf<Code>, names: Names) => string } = {
  'card-shows-station': ({ station, atSeconds }) => `card ${station} read at ${clock(atSeconds)}`,
  'card-shows-other': ({ station, expected, atSeconds }) =>
    `card ${station} read at ${clock(atSeconds)}, not ${expected}`,
  'teacher-named-station': ({ station }) => `you named station ${station}`,
  'teacher-named-other': ({ station, expected }) => `you named station ${station}, not ${expected}`,
  'only-slot-left': ({ station }, names) => `no card read; only ${names.station(station)} is left for it`,
};

function clock(seconds: number): string {
  const whole = Math.floor(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}

/** Why something is proposed, in a few words. */
export function explainProposal(reason: ReasonOf<ReasonCode>, names: Names): string {
  const word = WORDINGS[reason.code] as (reason: ReasonOf<ReasonCode>, names: Names) => string;
  return word(reason, names);
}
