import type { Outcome } from '../platform/outcome.ts';
import type { CallName, CallOutput } from './calls.ts';
import type { Problem } from './problem.ts';

/** What a face hears back: the value, with what was odd on the way, or why there is none. */
export type Reply<Name extends CallName> = Outcome<CallOutput<Name>, Problem>;
