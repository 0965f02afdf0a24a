import type { LoomSlot, Ticket } from './loom.ts';

/** The threads from slots to clips, drawn on a ground of 100 by 100 that stretches with the clock. */
export function Threads({
  slots,
  tickets,
  places,
}: {
  readonly slots: readonly LoomSlot[];
  readonly tickets: readonly Ticket[];
  /** Where each ticket stands, in per cent. */
  readonly places: readonly number[];
}) {
  return (
    <svg className="th" viewBox="0 0 100 100" preserveAspectRatio="none" aria-hidden="true">
      {tickets.map((ticket, at) => {
        const slot = slots.find((each) => each.slot === ticket.slot);
        if (!slot) return null;
        const from = slot.topPercent + slot.heightPercent / 2;
        const to = places[at] ?? ticket.percent;
        return (
          <path key={ticket.clip.id} className={ticket.look} d={`M0 ${from}C45 ${from} 55 ${to} 100 ${to}`} />
        );
      })}
    </svg>
  );
}
