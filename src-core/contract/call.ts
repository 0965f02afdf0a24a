import type { z } from 'zod';

/** What a call takes and gives. */
export interface Call<In extends z.ZodType, Out extends z.ZodType> {
  readonly in: In;
  readonly out: Out;
  readonly isJob: boolean;
}

/** A call that answers at once. */
export function call<In extends z.ZodType, Out extends z.ZodType>(input: In, output: Out): Call<In, Out> {
  return { in: input, out: output, isJob: false };
}

/** A call that may take long: it reports progress and can be cancelled. */
export function job<In extends z.ZodType, Out extends z.ZodType>(input: In, output: Out): Call<In, Out> {
  return { in: input, out: output, isJob: true };
}
