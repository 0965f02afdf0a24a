import { useEffect, useState } from 'react';
import type { SlipView } from '../../../src-core/contract/hand-in-view.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { PAPER_KIND } from '../../text/english/hand-in-paper.ts';
import { SLIP } from '../../text/english/slips.ts';

/** Every slip in the words that will stand on it. */
export function SlipList({
  kind,
  desk: { client, lesson },
  revision,
}: {
  readonly kind: 'squad-slips' | 'pupil-slips';
  readonly desk: LessonDesk;
  readonly revision: number;
}) {
  const [slips, setSlips] = useState<readonly SlipView[] | null>(null);
  const of = kind === 'squad-slips' ? 'squads' : 'pupils';
  // biome-ignore lint/correctness/useExhaustiveDependencies: another revision has other slips
  useEffect(() => {
    let isWanted = true;
    void client.request('readSlips', { lesson, of }).then((reply) => {
      if (isWanted && reply.ok) setSlips(reply.value.slips);
    });
    return () => {
      isWanted = false;
    };
  }, [client, lesson, of, revision]);
  if (slips === null) return <p className="pen pad">{HAND_IN.asking}</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="slip-words" tabIndex={0} aria-label={PAPER_KIND.slips}>
      <p className="cap">{PAPER_KIND.slipCount(slips.length, of)}</p>
      <ol>
        {slips.map((slip, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: slips are known by their place, two pupils may be called alike
          <li key={at}>
            <h3>{slip.name}</h3>
            {slip.instead !== null && <p>{slip.instead}</p>}
            <Lines head={SLIP.well} lines={slip.well} />
            <Lines head={SLIP.next} lines={slip.next} />
            {slip.waiting !== null && <p className="pen">{slip.waiting}</p>}
          </li>
        ))}
      </ol>
    </section>
  );
}

function Lines({ head, lines }: { readonly head: string; readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <>
      <p className="cap">{head}</p>
      <ul>
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
