import type { RequestMessage, Wire } from '../../src-core/contract/desk-client.ts';
import type { DeskEvent } from '../../src-core/contract/events.ts';

/** What the desktop shell's preload puts on the window: three functions and nothing else. */
export interface ShellBridge {
  readonly request: (message: RequestMessage) => Promise<unknown>;
  readonly cancel: (job: string) => void;
  readonly subscribe: (listener: (event: DeskEvent) => void) => () => void;
}

/** The wire of a window of the desktop shell; null where the page is in a browser. */
export function findShellWire(): Wire | null {
  const { routemark } = globalThis as { routemark?: ShellBridge };
  return routemark ? { ...routemark, newJob: () => crypto.randomUUID() } : null;
}
