import './count-sheet.css';
import './film.css';
import './review.css';
import './score-panel.css';
import { useMemo, useRef, useState } from 'react';
import { getFlagStep, isOpen } from '../../client/flag-step.ts';
import type { StepProps } from '../../client/steps.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Button } from '../../ui/button.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { changePreferences, readPreferences } from '../../ui/preferences.ts';
import { CardTable } from './card-table.tsx';
import { buildClassCard, type ClassCard } from './class-card.ts';
import { IdRow } from './id-row.tsx';
import { ReviewBlank } from './review-blank.tsx';
import { ReviewDesk } from './review-desk.tsx';
import { useReview } from './use-review.ts';
import { WatchLine } from './watch-line.tsx';

/** Review: one clip on the desk after another, beside the class card that is the queue. */
export function Review(props: StepProps) {
  const { lesson, names, go } = props;
  const way = useReview(props);
  const { item, queue } = way;
  const { plan, flags, squadScores } = lesson;
  const before = useRef<ClassCard | null>(null);
  const card = useMemo(() => {
    before.current = buildClassCard({ plan, flags, squadScores }, before.current);
    return before.current;
  }, [plan, flags, squadScores]);
  const [isComparing, setComparing] = useState(false);
  const open = flags.filter(isOpen);
  const goToFlag = () => {
    const [first] = open;
    if (!way.goToFlag() && first) go(getFlagStep(first.flag.code), first.key);
  };
  useKeys({
    'next-flag': goToFlag,
    back: way.goBack,
    compare: () => setComparing((now) => !now),
    'hide-names': () => changePreferences({ areNamesHidden: !readPreferences().areNamesHidden }),
  });
  const table = <CardTable card={card} current={item?.clip.id ?? null} names={names} onShow={way.show} />;
  if (!item) {
    return (
      <Blank {...props} clips={queue.length} openFlags={open.length} onFlags={goToFlag}>
        {table}
      </Blank>
    );
  }
  const next = way.next && REVIEW.nextOne(way.next.station, names.squad(way.next.squad));
  return (
    <>
      <IdRow lesson={lesson} item={item} names={names} order={way.order} onOrder={way.setOrder} />
      <ReviewDesk {...props} way={way} item={item} isComparing={isComparing} onCompare={setComparing}>
        <section className="sheet stamp" aria-label={REVIEW.classCard}>
          <header>
            <h2>{REVIEW.classCard}</h2>
            <span className="cap">{REVIEW.counts(card.inked, card.left, card.missing)}</span>
            <Button className="push" keyId="compare" onPress={() => setComparing(true)}>
              {REVIEW.compareAt(item.station)}
            </Button>
          </header>
          {table}
          <footer>
            <p className="nxt">{REVIEW.next(next)}</p>
            <WatchLine lesson={lesson} state={props.state} desk={props.desk} />
          </footer>
        </section>
      </ReviewDesk>
    </>
  );
}

function Blank(
  props: StepProps & {
    readonly clips: number;
    readonly openFlags: number;
    readonly onFlags: () => void;
    readonly children: React.ReactNode;
  },
) {
  const { lesson, go, clips, openFlags, onFlags, children } = props;
  const isReading = props.state.reading !== null || lesson.reading.state === 'stamps';
  if (clips === 0) {
    const remedy = isReading ? null : { name: REVIEW.toBringIn, go: () => go('bring-in') };
    return (
      <ReviewBlank
        glyph="folder"
        title={isReading ? REVIEW.loadingTitle : REVIEW.emptyTitle}
        text={[isReading ? REVIEW.loading : REVIEW.empty]}
        remedy={remedy}
      >
        {children}
      </ReviewBlank>
    );
  }
  return (
    <ReviewBlank
      glyph="tick"
      title={REVIEW.doneTitle}
      text={[REVIEW.done(clips), ...(openFlags > 0 ? [REVIEW.doneFlags(openFlags)] : [])]}
      remedy={
        openFlags > 0
          ? { name: REVIEW.toFlags, go: onFlags }
          : { name: REVIEW.toScores, go: () => go('scores') }
      }
    >
      {children}
    </ReviewBlank>
  );
}
