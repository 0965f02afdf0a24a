import type { ReactNode } from 'react';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import type { Counted } from './counts.ts';

/** The counts as figures and one bar, and what to do about each. */
export function CountedBefore({
  counted,
  onFlags,
  onReview,
  onScores,
}: {
  readonly counted: Counted;
  readonly onFlags: () => void;
  readonly onReview: () => void;
  readonly onScores: () => void;
}) {
  const { inked, pencilled, flagged, noClip, slots, openFlags, waiting, pointsMissing } = counted;
  const share = (amount: number) => ({ width: `${(100 * amount) / Math.max(1, slots)}%` });
  return (
    <>
      <div className="cnt">
        <div className="big">
          <Figure amount={inked} word={HAND_IN.inked} />
          <Figure amount={pencilled} word={HAND_IN.pencilled} look="p" />
          <Figure amount={flagged} word={HAND_IN.flagged} look={flagged > 0 ? 'need' : ''} />
          <Figure amount={noClip} word={HAND_IN.noClip} />
        </div>
        <div className="tally" role="img" aria-label={HAND_IN.tally(inked, pencilled, flagged, noClip)}>
          <i className="k" style={share(inked)} />
          <i className="p" style={share(pencilled)} />
          <i className="f" style={share(flagged)} />
          <i className="m" style={share(noClip)} />
        </div>
      </div>
      <ul className="todo">
        {openFlags > 0 && (
          <Todo button={HAND_IN.settle} keyId="next-flag" onPress={onFlags}>
            <span className="flag loud">
              <Glyph name="order" />
              {HAND_IN.flagsOpen(openFlags)}
            </span>
          </Todo>
        )}
        {waiting > 0 && (
          <Todo button={HAND_IN.review} onPress={onReview}>
            {HAND_IN.wait(waiting)}
          </Todo>
        )}
        {pointsMissing > 0 && (
          <Todo button={HAND_IN.scores} onPress={onScores}>
            {HAND_IN.pointsMissing(pointsMissing)}
          </Todo>
        )}
        {counted.absent + counted.excused > 0 && (
          <li>
            <p>{HAND_IN.away(counted.absent, counted.excused)}</p>
          </li>
        )}
        {counted.isFinal && (
          <li>
            <p>{HAND_IN.allInked}</p>
          </li>
        )}
      </ul>
    </>
  );
}

function Figure({
  amount,
  word,
  look = '',
}: {
  readonly amount: number;
  readonly word: string;
  readonly look?: string;
}) {
  return (
    <div className={look}>
      <b>{amount}</b>
      {word}
    </div>
  );
}

function Todo({
  children,
  button,
  keyId,
  onPress,
}: {
  readonly children: ReactNode;
  readonly button: string;
  readonly keyId?: 'next-flag';
  readonly onPress: () => void;
}) {
  return (
    <li>
      <p>{children}</p>
      <Button onPress={onPress} {...(keyId && { keyId })}>
        {button}
      </Button>
    </li>
  );
}
