import type { LessonView } from '../../../src-core/contract/lesson-view.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import { STEP_NAMES } from '../../text/english/window.ts';
import { Pick } from '../../ui/pick.tsx';
import { ScreenHead } from '../../ui/sheet.tsx';
import type { ClockAxis } from './clock-axis.ts';
import type { Zoom } from './use-zoom.ts';

const QUARTER_MS = 15 * 60_000;

/** What stands on the loom in one sentence, how it is laid out, and how much of the clock is shown. */
export function LineUpHead({
  lesson,
  layout,
  zoom,
  axis,
  onLayout,
}: {
  readonly lesson: LessonView;
  readonly layout: 'squad' | 'place';
  readonly zoom: Zoom;
  readonly axis: ClockAxis;
  readonly onLayout: (layout: 'squad' | 'place') => void;
}) {
  const rangeMs = axis.toMs - axis.fromMs;
  const slotMs = ((axis.bounds.at(-1) ?? 0) - (axis.bounds[0] ?? 0)) / Math.max(1, axis.bounds.length - 1);
  const factors = { whole: 1, quarter: rangeMs / QUARTER_MS, slot: rangeMs / (slotMs * 1.15) } as const;
  const near = (['whole', 'quarter', 'slot'] as const).find(
    (each) => Math.abs(Math.log(zoom.factor / factors[each])) < 0.01,
  );
  return (
    <ScreenHead title={STEP_NAMES['line-up']} sentence={getSentence(lesson)}>
      <Pick
        label={LINE_UP.layout}
        value={layout}
        onChange={onLayout}
        choices={[
          { value: 'squad', name: LINE_UP.bySquad },
          { value: 'place', name: LINE_UP.byPlace },
        ]}
      />
      <Pick
        label={LINE_UP.howMuch}
        value={near ?? 'other'}
        onChange={(value) => value !== 'other' && zoom.set(factors[value])}
        choices={[
          { value: 'whole', name: LINE_UP.whole },
          { value: 'quarter', name: LINE_UP.quarter },
          { value: 'slot', name: LINE_UP.oneSlot },
        ]}
      />
    </ScreenHead>
  );
}

function getSentence({ clips, plan, reading }: LessonView): string {
  if (clips.length === 0) return LINE_UP.emptySentence;
  if (reading.state === 'stamps' || reading.state === 'cards') {
    return LINE_UP.readingSentence(reading.done, reading.total);
  }
  return LINE_UP.sentence(clips.filter(({ aside }) => aside === null).length, plan.squads.length);
}
