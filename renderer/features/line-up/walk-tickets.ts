import type { LoomColumn, Ticket } from './loom.ts';

/** A way to go from one ticket to another. */
export type TicketStep = 'up' | 'down' | 'left' | 'right';

/** The ticket that a step leads to; the first of all where none is chosen yet. Null: there is none that way. */
export function findTicket(
  columns: readonly LoomColumn[],
  from: string | null,
  step: TicketStep,
): Ticket | null {
  const at = columns.findIndex(({ tickets }) => tickets.some(({ clip }) => clip.id === from));
  const column = columns[at];
  if (!column) return columns.find(({ tickets }) => tickets.length > 0)?.tickets[0] ?? null;
  const place = column.tickets.findIndex(({ clip }) => clip.id === from);
  if (step === 'up') return column.tickets[place - 1] ?? null;
  if (step === 'down') return column.tickets[place + 1] ?? null;
  const percent = column.tickets[place]?.percent ?? 0;
  const others = step === 'left' ? columns.slice(0, at).toReversed() : columns.slice(at + 1);
  const next = others.find(({ tickets }) => tickets.length > 0);
  return next ? findNearest(next.tickets, percent) : null;
}

function findNearest(tickets: readonly Ticket[], percent: number): Ticket | null {
  let best: Ticket | null = null;
  for (const ticket of tickets) {
    if (!best || Math.abs(ticket.percent - percent) < Math.abs(best.percent - percent)) best = ticket;
  }
  return best;
}
