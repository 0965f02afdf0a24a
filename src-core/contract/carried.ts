import * as z from 'zod';

/**
 * A schema for data that the core itself built and that a reply only carries: checked to be an object or a list,
 * typed as what it is. What comes from a face is never taken this way.
 */
export function carry<Carried extends object>(): z.ZodType<Carried, Carried> {
  return z.custom<Carried>((value) => typeof value === 'object' && value !== null);
}
