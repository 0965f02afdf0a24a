import { fail, type Outcome } from '../platform/outcome.ts';
import { CALLS, type CallName, type CallOutput, type CheckedInput } from './calls.ts';
import type { Problem } from './problem.ts';

/** What carries the calls out, one function a name. `Context` is the host's: who asks, how to stop, how to report. */
export type Handlers<Context> = {
  readonly [Name in CallName]: (
    input: CheckedInput<Name>,
    context: Context,
  ) => Promise<Outcome<CallOutput<Name>, Problem>>;
};

/** A request as a wire brings it: nothing about it is believed. */
export interface RawRequest {
  readonly name: unknown;
  readonly input: unknown;
}

type Handler<Context> = (input: unknown, context: Context) => Promise<Outcome<unknown, Problem>>;

/**
 * Carries one request out. The name is looked up among the list's own names and the input is checked before
 * anything runs; the value is checked too, so that nothing leaves that the list does not name. Rejects only where
 * the program itself is at fault.
 */
export async function dispatch<Context>(
  handlers: Handlers<Context>,
  request: RawRequest,
  context: Context,
): Promise<Outcome<unknown, Problem>> {
  const { name, input } = request;
  if (typeof name !== 'string' || !isCallName(name)) {
    return fail({ code: 'call-unknown', name: String(name).slice(0, 60) });
  }
  const checked = CALLS[name].in.safeParse(input);
  if (!checked.success) {
    const path = checked.error.issues[0]?.path.map(String).join('.') ?? '';
    return fail({ code: 'call-malformed', name, path: path.slice(0, 200) });
  }
  const outcome = await (handlers[name] as Handler<Context>)(checked.data, context);
  return outcome.ok ? { ...outcome, value: CALLS[name].out.parse(outcome.value) } : outcome;
}

/** Whether a text names a call; names that objects have by birth do not. */
function isCallName(name: string): name is CallName {
  return Object.hasOwn(CALLS, name);
}
