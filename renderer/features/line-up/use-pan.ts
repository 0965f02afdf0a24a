import { type RefObject, useEffect } from 'react';

/** Drags the loom about by its ground, with a mouse; touch and trackpads scroll by themselves. */
export function usePan(loom: RefObject<HTMLDivElement | null>): void {
  useEffect(() => {
    const box = loom.current;
    if (!box) return;
    let from: { x: number; y: number; left: number; top: number } | null = null;
    const down = (event: PointerEvent) => {
      const isGround = event.target instanceof Element && !event.target.closest('button, a, header');
      if (event.pointerType !== 'mouse' || event.button !== 0 || !isGround) return;
      from = { x: event.clientX, y: event.clientY, left: box.scrollLeft, top: box.scrollTop };
      box.setPointerCapture(event.pointerId);
      box.classList.add('panning');
    };
    const move = (event: PointerEvent) => {
      if (from) box.scrollTo(from.left - (event.clientX - from.x), from.top - (event.clientY - from.y));
    };
    const up = () => {
      from = null;
      box.classList.remove('panning');
    };
    box.addEventListener('pointerdown', down);
    box.addEventListener('pointermove', move);
    box.addEventListener('pointerup', up);
    box.addEventListener('pointercancel', up);
    return () => {
      box.removeEventListener('pointerdown', down);
      box.removeEventListener('pointermove', move);
      box.removeEventListener('pointerup', up);
      box.removeEventListener('pointercancel', up);
    };
  }, [loom]);
}
