import { useEffect } from 'react';
import type { StepProps } from '../../client/steps.ts';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { type Chosen, findNextFlag } from './chosen.ts';
import { settle } from './line-remedies.ts';
import type { LoomColumn } from './loom.ts';
import type { Zoom } from './use-zoom.ts';
import { findTicket, type TicketStep } from './walk-tickets.ts';

/** What is asked on the sheet at the moment. */
export type OpenSlip =
  | { readonly kind: 'move' | 'station' }
  | { readonly kind: 'clock'; readonly squad: string };

interface KeyParts {
  readonly props: StepProps;
  readonly columns: readonly LoomColumn[];
  readonly chosen: Chosen;
  readonly zoom: Zoom;
  readonly layout: 'squad' | 'place';
  readonly setLayout: (layout: 'squad' | 'place') => void;
  readonly setSlip: (slip: OpenSlip | null) => void;
}

const ZOOM_STEP = 1.35;

/** Every key of Line up; the ticket that is gone to by key has the focus. */
export function useLineUpKeys(parts: KeyParts): void {
  const { props, columns, chosen, zoom, layout, setLayout, setSlip } = parts;
  const { lesson, desk, target, go } = props;
  const walk = (step: TicketStep) => () => {
    const ticket = findTicket(columns, chosen.ticket?.clip.id ?? null, step);
    if (!ticket) return false;
    go('line-up', ticket.clip.id);
    focusTicket(ticket.clip.id);
    return true;
  };
  const goOn = () => {
    const next = findNextFlag(lesson, chosen.flag);
    if (!next) return false;
    go('line-up', next.key);
    // The keys act on its ticket from now on, so the focus goes there too; what has no clip has its slip.
    if (next.flag.clip === null) document.querySelector<HTMLElement>(findSlip(next.key))?.focus();
    else focusTicket(next.flag.clip);
    return true;
  };
  const answer = (settled: 'kept' | 'cleared') => () => {
    const { flag } = chosen;
    if (!flag || flag.answer) return false;
    void desk.decide(settle(flag.key, settled));
    goOn();
    return true;
  };
  const open = (slip: OpenSlip, isPossible: boolean) => () => {
    if (isPossible) setSlip(slip);
    return isPossible;
  };
  const hasClip = chosen.clip !== null;
  const squad = chosen.clip?.squad ?? chosen.flag?.flag.squad ?? null;
  useKeys({
    'ticket-up': walk('up'),
    'ticket-down': walk('down'),
    'ticket-left': walk('left'),
    'ticket-right': walk('right'),
    'next-flag': goOn,
    'keep-flag': answer('kept'),
    'clear-flag': answer('cleared'),
    'move-clip': open({ kind: 'move' }, hasClip),
    'choose-station': open({ kind: 'station' }, hasClip),
    'tablet-clock': open({ kind: 'clock', squad: squad ?? '' }, squad !== null),
    'zoom-in': () => zoom.by(ZOOM_STEP),
    'zoom-out': () => zoom.by(1 / ZOOM_STEP),
    'by-place': () => setLayout(layout === 'squad' ? 'place' : 'squad'),
    'back-out': () => setSlip(null),
  });
  useEffect(() => {
    if (target === null) return;
    const clip = chosen.clip?.id;
    const ticket = clip && document.querySelector(`[data-clip="${clip}"]`);
    if (ticket) ticket.scrollIntoView({ block: 'nearest', inline: 'nearest' });
  }, [target, chosen.clip?.id]);
}

function findSlip(flag: string): string {
  return `[data-key=${CSS.escape(flag)}] .t`;
}

/** Gives a clip's ticket the focus, where it has one on the sheet. */
export function focusTicket(clip: string): void {
  document.querySelector<HTMLElement>(`[data-clip="${clip}"]`)?.focus({ preventScroll: true });
}
