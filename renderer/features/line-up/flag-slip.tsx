import { useState } from 'react';
import type { FlagView } from '../../../src-core/contract/lesson-view.ts';
import type { StepProps } from '../../client/steps.ts';
import { describeFlag } from '../../text/english/flags.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { Button } from '../../ui/button.tsx';
import { FlagTag } from '../../ui/flag-tag.tsx';
import { SquadMark } from '../../ui/squads.tsx';
import { FlagEvidence } from './flag-evidence.tsx';
import { type LineRemedy, listLineRemedies, settle } from './line-remedies.ts';
import { nameLineRemedy } from './line-remedy-words.ts';
import type { OpenSlip } from './use-line-up-keys.ts';

/** A flag: what and whose; chosen, also why, with stills, and what can be done. */
export function FlagSlip({
  entry,
  props,
  isChosen,
  onSlip,
}: {
  readonly entry: FlagView;
  readonly props: StepProps;
  readonly isChosen: boolean;
  readonly onSlip: (slip: OpenSlip) => void;
}) {
  const { names, go } = props;
  const { flag, key } = entry;
  const { what } = describeFlag(flag, names);
  return (
    <li className={`slip ${isChosen ? 'sel' : ''}`} data-key={key}>
      <button type="button" className="t" aria-expanded={isChosen} onClick={() => go('line-up', key)}>
        <FlagTag flag={flag} tone={isChosen ? 'loud' : 'soft'} />
        <span>
          <SquadMark squad={flag.squad} />
          <span className="w">{describePlace(entry, props)}</span>
        </span>
      </button>
      {isChosen && (
        <>
          <p>{what}</p>
          <FlagEvidence entry={entry} props={props} />
          <Remedies entry={entry} props={props} onSlip={onSlip} />
        </>
      )}
    </li>
  );
}

function Remedies({
  entry,
  props,
  onSlip,
}: {
  readonly entry: FlagView;
  readonly props: StepProps;
  readonly onSlip: (slip: OpenSlip) => void;
}) {
  const { desk, names } = props;
  const [reason, setReason] = useState('');
  const { flag, key } = entry;
  const run = (remedy: LineRemedy) => {
    if ('acts' in remedy) return void desk.decide(...remedy.acts);
    if (remedy.kind === 'keep') return void desk.decide(settle(key, 'kept', reason));
    if (remedy.kind === 'clear') return void desk.decide(settle(key, 'cleared', reason));
    if (remedy.kind === 'clock') return onSlip({ kind: 'clock', squad: flag.squad });
    onSlip({ kind: remedy.kind === 'move' ? 'move' : 'station' });
  };
  return (
    <>
      <div className="rem">
        {listLineRemedies(entry).map((remedy, at) => {
          const words = nameLineRemedy(remedy, flag.code, names);
          const keyId = remedy.kind === 'keep' ? 'keep-flag' : remedy.kind === 'clear' ? 'clear-flag' : null;
          return (
            <Button
              key={words}
              look={at === 0 ? 'ink' : 'plain'}
              onPress={() => run(remedy)}
              {...(keyId && { keyId })}
            >
              {words}
            </Button>
          );
        })}
      </div>
      <input
        className="field reason"
        aria-label={LINE_UP.reason}
        placeholder={LINE_UP.reason}
        maxLength={500}
        value={reason}
        onChange={({ target }) => setReason(target.value)}
      />
    </>
  );
}

function describePlace({ flag }: FlagView, { names, lesson }: StepProps): string {
  const slot = 'slot' in flag ? LINE_UP.slotsOf(flag.slot) : null;
  const clip = lesson.clips.find(({ id }) => id === flag.clip);
  const startMs = clip?.time?.startMs ?? null;
  const time = startMs === null ? null : names.times.minute(startMs);
  const station = 'station' in flag && flag.station ? names.station(flag.station) : null;
  return [slot, station, time].filter(Boolean).join(', ');
}
