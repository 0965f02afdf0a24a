import { randomUUID } from 'node:crypto';
import * as z from 'zod';
import { dispatch, type Handlers } from '../../contract/dispatch.ts';
import type { DeskEvent } from '../../contract/events.ts';
import type { Progress } from '../../contract/progress.ts';
import { fail } from '../../platform/outcome.ts';
import { openPace } from './pace.ts';

/** What a handler is given beside its input. */
export interface CallContext {
  /** Set when the face cancels the request, or goes away. */
  readonly signal: AbortSignal;
  readonly onProgress: (progress: Progress) => void;
}

/** What the faces of one host share. */
export interface FaceHost {
  readonly handlers: Handlers<CallContext>;
  /** Hears what concerns every face. Gives the way to end it. */
  readonly subscribe: (listener: (event: DeskEvent) => void) => () => void;
  /** Told of a fault of the program; `trace` is what the face was told. */
  readonly onFault: (trace: string, fault: unknown) => void;
}

/** One window or page at the host: the far end of every wire. */
export interface Face {
  /** Carries a message out, whatever it is, and gives the reply; never rejects. */
  readonly request: (message: unknown) => Promise<unknown>;
  /** Ends a request of this face; others are out of reach. */
  readonly cancel: (job: unknown) => void;
  readonly subscribe: (listener: (event: DeskEvent) => void) => () => void;
  /** Tells this face alone. */
  readonly tell: (event: DeskEvent) => void;
  /** Ends whatever it asked for. */
  readonly close: () => void;
}

const messageSchema = z.strictObject({
  job: z.string().regex(/^[A-Za-z0-9-]{8,64}$/),
  name: z.string().max(100),
  input: z.unknown(),
});

/** A face of this host. Progress goes to it alone; everything else to all. */
export function openFace(host: FaceHost): Face {
  const jobs = new Map<string, AbortController>();
  const listeners = new Set<(event: DeskEvent) => void>();
  const tell = (event: DeskEvent) => {
    for (const listener of listeners) listener(event);
  };
  const leave = host.subscribe(tell);
  return {
    request: (message) => carryOut(host, message, { jobs, tell }),
    cancel: (job) => jobs.get(String(job))?.abort(),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    tell,
    close: () => {
      leave();
      listeners.clear();
      for (const controller of jobs.values()) controller.abort();
    },
  };
}

async function carryOut(
  host: FaceHost,
  message: unknown,
  { jobs, tell }: { readonly jobs: Map<string, AbortController>; readonly tell: (event: DeskEvent) => void },
): Promise<unknown> {
  const parsed = messageSchema.safeParse(message);
  if (!parsed.success || jobs.has(parsed.data.job))
    return fail({ code: 'call-malformed', name: '', path: 'job' });
  const { job } = parsed.data;
  const controller = new AbortController();
  const { signal } = controller;
  jobs.set(job, controller);
  const getSecondsLeft = openPace(() => performance.now());
  const onProgress = (progress: Progress) => {
    if (!signal.aborted) tell({ kind: 'progress', job, progress, secondsLeft: getSecondsLeft(progress) });
  };
  try {
    return await dispatch(host.handlers, parsed.data, { signal, onProgress });
  } catch (fault) {
    if (signal.aborted) return fail({ code: 'call-cancelled' });
    const trace = randomUUID().slice(0, 8);
    host.onFault(trace, fault);
    return fail({ code: 'program-fault', trace });
  } finally {
    jobs.delete(job);
  }
}
