import { type ReactNode, useEffect, useRef } from 'react';
import type { StepProps } from '../../client/steps.ts';
import { BRING_IN } from '../../text/english/bring-in.ts';
import { Button } from '../../ui/button.tsx';
import { KeyCap } from '../../ui/key-cap.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import type { BringState } from './bring-job.ts';
import type { WaitingItem } from './waiting.ts';
import { WaitingSlip } from './waiting-slip.tsx';

/** The tray of what waits, each with its reason, its still and the press that settles it. */
export function WaitingTray({
  waiting,
  isBusy,
  bring,
  onClock,
  children,
  ...step
}: StepProps & {
  readonly waiting: readonly WaitingItem[];
  readonly isBusy: boolean;
  readonly bring: BringState;
  readonly onClock: (squad: string) => void;
  readonly children: ReactNode;
}) {
  const { target, go } = step;
  const list = useRef<HTMLOListElement>(null);
  useEffect(() => {
    const slip = target && list.current?.querySelector<HTMLElement>(`[data-key="${CSS.escape(target)}"]`);
    if (!slip) return;
    slip.scrollIntoView({ block: 'nearest' });
    slip.querySelector<HTMLElement>('button')?.focus();
  }, [target]);
  const done = bring.kind === 'idle' ? bring.done : null;
  return (
    <Sheet label={BRING_IN.waitingTray} className="probs">
      <header>
        <h2>{waiting.length > 0 ? BRING_IN.toPlace(waiting.length) : BRING_IN.nothingToPlace}</h2>
        {waiting.length > 0 && (
          <span className="push cap">
            {BRING_IN.next} <KeyCap id="next-flag" />
          </span>
        )}
      </header>
      {done && (
        <p className="brought" role="status">
          {BRING_IN.done(done.copied, done.alreadyThere)}
        </p>
      )}
      <ol ref={list}>
        {waiting.map((item) => (
          <WaitingSlip key={item.key} item={item} {...step} onClock={onClock} />
        ))}
        {waiting.length === 0 && !isBusy && (
          <li className="pr calm">
            <p className="read">{BRING_IN.nothingToPlaceText}</p>
            <Button look="ink" onPress={() => go('line-up')}>
              {BRING_IN.toLineUp}
            </Button>
          </li>
        )}
      </ol>
      {children}
    </Sheet>
  );
}
