import * as z from 'zod';

const keepingSchema = z.strictObject({
  format: z.literal('routemark-keeping'),
  version: z.literal(1),
  /** The last day on which the lesson is kept, in the school's zone. */
  until: z.iso.date(),
});

/** How long a lesson is kept: see {@link keepingSchema}. A copy of the lesson takes the date along. */
export type Keeping = z.infer<typeof keepingSchema>;

/** keeping.json's text for a last day, `2025-07-31`; null where that is no day. */
export function buildKeepingText(until: string): string | null {
  const keeping = keepingSchema.safeParse({ format: 'routemark-keeping', version: 1, until });
  return keeping.success ? `${JSON.stringify(keeping.data)}\n` : null;
}

/** Reads keeping.json; null where it is none of ours, for a date that cannot be read must not let anything go. */
export function parseKeeping(text: string): Keeping | null {
  try {
    return keepingSchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}

/** Whether the last day is over; days are `2025-07-31`, so that their order is that of their letters. */
export function isOverdue({ until }: Keeping, today: string): boolean {
  return today > until;
}
