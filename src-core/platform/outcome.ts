/** Anything that can go wrong in an expected way: data with a code, worded by the faces. Exceptions are bugs. */
export interface CodedProblem {
  readonly code: string;
}

/**
 * What could be read, with everything that could not. `ok: false` means there is no usable value at all;
 * `ok: true` may still carry problems about the parts that were left out.
 */
export type Outcome<Value, Problem extends CodedProblem> =
  | { readonly ok: true; readonly value: Value; readonly problems: readonly Problem[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** An outcome with a value, and the problems met on the way (none unless given). */
export function succeed<Value, Problem extends CodedProblem>(
  value: Value,
  problems: readonly Problem[] = [],
): Outcome<Value, Problem> {
  return { ok: true, value, problems };
}

/** An outcome without a value. */
export function fail<Problem extends CodedProblem>(...problems: readonly Problem[]): Outcome<never, Problem> {
  return { ok: false, problems };
}
