import type { CallInput, CallName } from './calls.ts';
import type { DeskEvent, JobId } from './events.ts';
import type { Progress } from './progress.ts';
import type { Reply } from './reply.ts';

/** The wish to stop, as an AbortSignal tells it. */
export interface CancelSignal {
  readonly aborted: boolean;
  readonly addEventListener: (type: 'abort', listener: () => void) => void;
  readonly removeEventListener: (type: 'abort', listener: () => void) => void;
}

/** What a request may be given on its way. */
export interface RequestOptions {
  readonly signal?: CancelSignal;
  /** `secondsLeft` is null where nobody can tell yet. */
  readonly onProgress?: (progress: Progress, secondsLeft: number | null) => void;
}

/** A request as it goes over a wire. */
export interface RequestMessage {
  readonly job: JobId;
  readonly name: string;
  readonly input: unknown;
}

/** What a wire does: carry, and nothing else. One a face. */
export interface Wire {
  /** Resolves with the reply; where the host cannot be reached, with the problem `desk-unreachable`. */
  readonly request: (message: RequestMessage) => Promise<unknown>;
  readonly cancel: (job: JobId) => void;
  /** Gives the way to end it. */
  readonly subscribe: (listener: (event: DeskEvent) => void) => () => void;
  /** An id that no other request has. */
  readonly newJob: () => JobId;
}

/** How a face asks the host. */
export interface DeskClient {
  /** Never rejects for an expected reason: those are problems of the reply. */
  readonly request: <Name extends CallName>(
    name: Name,
    input: CallInput<Name>,
    options?: RequestOptions,
  ) => Promise<Reply<Name>>;
  /** Every event but progress, which goes to the request that it belongs to. Gives the way to end it. */
  readonly subscribe: (listener: (event: DeskEvent) => void) => () => void;
}

/** A client over a wire. */
export function buildDeskClient(wire: Wire): DeskClient {
  return {
    request: async (name, input, { signal, onProgress } = {}) => {
      const job = wire.newJob();
      const cancel = () => wire.cancel(job);
      const leave = wire.subscribe((event) => {
        if (event.kind === 'progress' && event.job === job) onProgress?.(event.progress, event.secondsLeft);
      });
      signal?.addEventListener('abort', cancel);
      try {
        const reply = wire.request({ job, name, input });
        if (signal?.aborted) cancel();
        // The host checks every reply against the list before it sends it.
        return (await reply) as Reply<typeof name>;
      } finally {
        signal?.removeEventListener('abort', cancel);
        leave();
      }
    },
    subscribe: (listener) =>
      wire.subscribe((event) => {
        if (event.kind !== 'progress') listener(event);
      }),
  };
}
