import { useState } from 'react';
import type { SecondMarkingView } from '../../../../src-core/contract/second-calls.ts';
import { buildHash } from '../../../client/route.ts';
import type { StepProps } from '../../../client/steps.ts';
import { SECOND } from '../../../text/english/second-marking.ts';
import { Button } from '../../../ui/button.tsx';
import { Sheet } from '../../../ui/sheet.tsx';

/** Who has marked a second time, each to be compared or gone on with, and the way to begin. */
export function MarkersSheet({
  desk,
  markings,
  shown,
  onShow,
}: StepProps & {
  readonly markings: readonly SecondMarkingView[] | null;
  readonly shown: SecondMarkingView | null;
  readonly onShow: (who: string) => void;
}) {
  const [name, setName] = useState('');
  const open = async (who: string) => {
    const reply = await desk.client.request('openSecondMarking', { lesson: desk.lesson, who });
    if (reply.ok) location.hash = buildHash({ lesson: reply.value.lesson, step: 'review', target: null });
    else desk.report(reply.problems);
  };
  return (
    <Sheet label={SECOND.markers} className="col">
      <header className="hd">
        <h2>{SECOND.markers}</h2>
      </header>
      <form
        className="pad keep"
        onSubmit={(event) => {
          event.preventDefault();
          if (name.trim() !== '') void open(name.trim());
        }}
      >
        <p className="read">{SECOND.why}</p>
        <label>
          {SECOND.who}
          <input
            className="field"
            value={name}
            maxLength={60}
            placeholder={SECOND.whoHint}
            onChange={({ currentTarget }) => setName(currentTarget.value)}
          />
        </label>
        <div className="rem">
          <button type="submit" className="btn" disabled={name.trim() === ''}>
            {SECOND.begin}
          </button>
        </div>
      </form>
      <ul className="markers">
        {markings?.map(({ who, comparison }) => (
          <li key={who} className={who === shown?.who ? 'env on' : 'env'}>
            <b>{who}</b>
            <span className="cap">{SECOND.both(Math.max(...comparison.subjects.map(getPairs)))}</span>
            <span className="rem">
              <Button label={SECOND.compareLabel(who)} onPress={() => onShow(who)}>
                {SECOND.compare}
              </Button>
              <Button label={SECOND.goOnLabel(who)} onPress={() => void open(who)}>
                {SECOND.goOn}
              </Button>
            </span>
          </li>
        ))}
      </ul>
    </Sheet>
  );
}

function getPairs({ agreement }: SecondMarkingView['comparison']['subjects'][number]): number {
  return agreement.pairs;
}
