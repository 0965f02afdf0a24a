import './bring-in.css';
import './tray.css';
import { useMemo, useState, useSyncExternalStore } from 'react';
import { listOpenFlags } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { AsideNote } from './aside-note.tsx';
import { BringHead } from './bring-head.tsx';
import { getBringJob } from './bring-job.ts';
import { BringLeft } from './bring-left.tsx';
import { BringSlips } from './bring-slips.tsx';
import { BringStopped } from './bring-stopped.tsx';
import { DropZone } from './drop-zone.tsx';
import { RunStrip } from './run-strip.tsx';
import { TrayRack } from './tray-rack.tsx';
import { buildTrays } from './trays.ts';
import { useBring } from './use-bring.ts';
import { useDrop } from './use-drop.ts';
import { findNextWaiting, listWaiting } from './waiting.ts';
import { WaitingTray } from './waiting-tray.tsx';

/** Clips come in: dropped or chosen, copied and checked, sorted into trays; what waits stands beside with its remedy. */
export function BringIn(props: StepProps) {
  const { lesson, state, desk, names, target, go } = props;
  const job = getBringJob(desk);
  const bring = useSyncExternalStore(job.subscribe, job.getState);
  const ways = useBring(props, job);
  const isOver = useDrop(props, job);
  const [clockOf, setClockOf] = useState<string | null>(null);
  const trays = useMemo(() => buildTrays(lesson), [lesson]);
  const waiting = useMemo(() => listWaiting(lesson), [lesson]);
  const nextProblem = () => {
    const next = findNextWaiting(waiting, target);
    // Where nothing waits here any more, the next flag is one of the route.
    const flag = next ? null : listOpenFlags(lesson, 'line-up')[0];
    if (next) go('bring-in', next.key);
    else if (flag) go('line-up', flag.key);
    return next !== null || flag !== undefined;
  };
  useKeys({ 'add-folders': () => ways.choose('copy'), 'next-flag': nextProblem });
  const isBusy = bring.kind === 'running' || state.reading !== null;
  const isEmpty = lesson.clips.length === 0 && !isBusy;
  return (
    <>
      <BringHead {...{ lesson, bring, isBusy, go }} onChoose={ways.choose} onReadAgain={desk.readClips} />
      {bring.kind === 'stopped' && <BringStopped {...{ bring, names, ways }} onPutAway={job.putAway} />}
      {bring.kind === 'idle' && bring.done && (
        <BringLeft done={bring.done} {...{ names, ways }} onPutAway={job.putAway} />
      )}
      {isBusy && <RunStrip bring={bring} reading={state.reading} lesson={lesson} />}
      <BringSlips {...{ props, ways, waiting, clockOf }} onClockClose={() => setClockOf(null)} />
      <div className={`bring-ground ${isEmpty ? 'empty' : ''} ${isOver ? 'over' : ''}`}>
        {(isEmpty || isOver) && (
          <DropZone isOver={isOver} onChoose={isEmpty ? () => ways.choose('copy') : null} />
        )}
        <TrayRack trays={trays} names={names} isBusy={isBusy} onClock={setClockOf} />
        {!isEmpty && (
          <WaitingTray {...props} {...{ waiting, isBusy, bring }} onClock={setClockOf}>
            <AsideNote {...props} />
          </WaitingTray>
        )}
      </div>
    </>
  );
}
