import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import { findStation } from '../../../src-core/lesson/plan.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { REVIEW } from '../../text/english/review.ts';
import { Plate } from '../../ui/marks.tsx';
import { Pick } from '../../ui/pick.tsx';
import { changePreferences, usePreferences } from '../../ui/preferences.ts';
import { SquadMark } from '../../ui/squads.tsx';
import type { QueueItem, QueueOrder } from './review-queue.ts';

const ORDERS = (['flagged', 'stations', 'squads'] as const).map((value) => ({
  value,
  name: REVIEW.orders[value],
}));

/** Which clip is on the desk, and in which order clips come. */
export function IdRow({
  lesson,
  item,
  names,
  order,
  onOrder,
}: {
  readonly lesson: LessonView;
  readonly item: QueueItem | null;
  readonly names: LessonNames;
  readonly order: QueueOrder;
  readonly onOrder: (order: QueueOrder) => void;
}) {
  const { areNamesHidden } = usePreferences();
  return (
    <div className="idrow">
      {item && <Title lesson={lesson} item={item} names={names} />}
      <span className="push" />
      <Pick label={REVIEW.order} choices={ORDERS} value={order} onChange={onOrder} />
      <button
        type="button"
        className="btn"
        aria-pressed={areNamesHidden}
        onClick={() => changePreferences({ areNamesHidden: !areNamesHidden })}
      >
        {REVIEW.hideNames}
      </button>
    </div>
  );
}

function Title({
  lesson,
  item,
  names,
}: {
  readonly lesson: LessonView;
  readonly item: QueueItem;
  readonly names: LessonNames;
}) {
  const { clip, squad, station, slot } = item;
  const wanted = findStation(lesson.plan, station);
  const route = lesson.plan.squads.find(({ code }) => code === squad)?.route ?? [];
  const words = REVIEW.slot(slot, route.length);
  return (
    <>
      <h1>
        <SquadMark squad={squad} /> {REVIEW.at} <Plate letter={station} /> {wanted?.place}
      </h1>
      <p className="facts">
        <span>
          {words.before} <b>{words.figure}</b> {words.after}
        </span>
        {wanted && (
          <span>
            <b>{wanted.reps}</b> {wanted.exercise.toLowerCase()}
          </span>
        )}
        <span>{describeTime(clip, names)}</span>
        {clip.assignment && <span>{describeOrder(clip.assignment)}</span>}
      </p>
    </>
  );
}

function describeTime({ time }: QueueItem['clip'], names: LessonNames) {
  if (!time || time.startMs === null) return REVIEW.notTimed;
  return (
    <>
      {REVIEW.filmed} <b>{names.time(time.startMs)}</b> {REVIEW.give(time.uncertaintySeconds)}
    </>
  );
}

function describeOrder({ inOrder, role }: NonNullable<QueueItem['clip']['assignment']>): string {
  if (role === 'wrong-place') return REVIEW.orderWords.place;
  return inOrder ? REVIEW.inOrder : REVIEW.orderWords.late;
}
