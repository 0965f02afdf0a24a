import { type RefObject, useCallback, useEffect, useLayoutEffect, useRef, useState } from 'react';
import type { ClockAxis } from './clock-axis.ts';

/** How much of the clock the loom shows; 1 is all of it. */
export interface Zoom {
  readonly loom: RefObject<HTMLDivElement | null>;
  readonly factor: number;
  /** Distance that tickets keep from each other, in per cent of the clock. */
  readonly gapPercent: number;
  readonly set: (factor: number) => void;
  readonly by: (times: number) => void;
}

const MOST = 24;

/** Height of a ticket with the room below it, in rem. */
const TICKET_REM = 1.8;

/** How long after the last turn of the wheel tickets make room for each other anew. */
const REST_MS = 140;

/**
 * Zooms by one style of the loom alone, so that a turn of the wheel is one layout and no rendering; tickets make room
 * for each other when it rests. What was in the middle, or under the pointer, stays there.
 */
export function useZoom(axis: ClockAxis, layout: string): Zoom {
  const loom = useRef<HTMLDivElement>(null);
  const current = useRef(1);
  const timer = useRef(0);
  const [factor, setFactor] = useState(1);
  const [gapPercent, setGap] = useState(3);
  const measure = useCallback(() => {
    const box = loom.current;
    if (!box) return;
    const remPx = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    const lacePx = box.querySelector('.lace-high')?.clientHeight ?? box.clientHeight;
    setGap(Math.round(((TICKET_REM * remPx) / Math.max(1, lacePx)) * 10_000) / 100);
    setFactor(current.current);
  }, []);
  const set = useCallback(
    (wanted: number, anchorPx?: number) => {
      const box = loom.current;
      if (!box) return;
      const next = Math.max(1, Math.min(MOST, wanted));
      const anchor = anchorPx ?? box.clientHeight / 2;
      const share = (box.scrollTop + anchor) / box.scrollHeight;
      current.current = next;
      box.style.setProperty('--zoom', String(next));
      box.scrollTop = share * box.scrollHeight - anchor;
      clearTimeout(timer.current);
      timer.current = window.setTimeout(measure, REST_MS);
    },
    [measure],
  );
  // biome-ignore lint/correctness/useExhaustiveDependencies: another layout is another element.
  useEffect(() => {
    const box = loom.current;
    if (!box) return;
    const turn = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      set(current.current * Math.exp(-event.deltaY / 300), event.clientY - box.getBoundingClientRect().top);
    };
    box.addEventListener('wheel', turn, { passive: false });
    return () => box.removeEventListener('wheel', turn);
  }, [set, layout]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another clock or layout is another height to measure.
  useLayoutEffect(() => {
    const box = loom.current;
    if (!box) return;
    box.style.setProperty('--zoom', String(current.current));
    const observer = new ResizeObserver(measure);
    observer.observe(box);
    return () => observer.disconnect();
  }, [measure, axis, layout]);
  const by = useCallback((times: number) => set(current.current * times), [set]);
  return { loom, factor, gapPercent, set, by };
}
