import { type RefObject, useEffect, useRef } from 'react';

/** Where a dragged clip was let go. */
export interface TicketDrop {
  readonly clip: string;
  readonly squad: string;
  /** Null: beside the route's slots. */
  readonly slot: number | null;
}

/** Movement below this is a click. */
const CLICK_PX = 5;

interface Held {
  readonly ticket: HTMLElement;
  readonly x: number;
  readonly y: number;
  isMoving: boolean;
}

/** Drags tickets to another slot or squad. The loom is told only where one was let go; nothing renders on the way. */
export function useTicketDrag(
  loom: RefObject<HTMLDivElement | null>,
  onDrop: (drop: TicketDrop) => void,
): void {
  // A drag outlives any rendering on its way.
  const told = useRef(onDrop);
  told.current = onDrop;
  useEffect(() => {
    const box = loom.current;
    if (!box) return;
    let held: Held | null = null;
    let over: Element | null = null;
    const mark = (slot: Element | null) => {
      over?.classList.remove('aim');
      slot?.classList.add('aim');
      over = slot;
    };
    const down = (event: PointerEvent) => {
      const ticket = event.target instanceof Element && event.target.closest<HTMLElement>('.tk');
      if (ticket && event.button === 0)
        held = { ticket, x: event.clientX, y: event.clientY, isMoving: false };
    };
    const move = (event: PointerEvent) => {
      if (!held) return;
      const [dx, dy] = [event.clientX - held.x, event.clientY - held.y];
      if (!held.isMoving && Math.hypot(dx, dy) < CLICK_PX) return;
      if (!held.isMoving) held.ticket.classList.add('held');
      held.isMoving = true;
      held.ticket.style.translate = `${dx}px ${dy}px`;
      mark(findSlot(event.clientX, event.clientY).slot);
    };
    const end = (event: PointerEvent) => {
      if (!held) return;
      const { ticket, isMoving } = held;
      held = null;
      mark(null);
      ticket.classList.remove('held');
      ticket.style.translate = '';
      if (!isMoving || event.type === 'pointercancel') return;
      swallowClick(ticket);
      const drop = readDrop(ticket, event);
      if (drop) told.current(drop);
    };
    box.addEventListener('pointerdown', down);
    addEventListener('pointermove', move);
    addEventListener('pointerup', end);
    addEventListener('pointercancel', end);
    return () => {
      box.removeEventListener('pointerdown', down);
      removeEventListener('pointermove', move);
      removeEventListener('pointerup', end);
      removeEventListener('pointercancel', end);
    };
  }, [loom]);
}

function readDrop(ticket: HTMLElement, { clientX, clientY }: PointerEvent): TicketDrop | null {
  const { slot, column } = findSlot(clientX, clientY);
  const clip = ticket.querySelector<HTMLElement>('[data-clip]')?.dataset.clip;
  const squad = column?.dataset.squad;
  const number = slot?.getAttribute('data-slot') ?? null;
  return clip && squad ? { clip, squad, slot: number === null ? null : Number(number) } : null;
}

/** The squad's card under a point, and the slot of it at that height. */
function findSlot(
  x: number,
  y: number,
): { readonly column: HTMLElement | null; readonly slot: Element | null } {
  const column = document.elementFromPoint(x, y)?.closest<HTMLElement>('.card[data-squad]') ?? null;
  const slot = [...(column?.querySelectorAll('[data-slot]') ?? [])].find((each) => {
    const { top, bottom } = each.getBoundingClientRect();
    return y >= top && y < bottom;
  });
  return { column, slot: slot ?? null };
}

function swallowClick(ticket: HTMLElement): void {
  const stop = (event: Event) => {
    event.stopPropagation();
    event.preventDefault();
  };
  ticket.addEventListener('click', stop, { capture: true, once: true });
  setTimeout(() => ticket.removeEventListener('click', stop, { capture: true }), 0);
}
