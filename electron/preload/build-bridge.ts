import type { RequestMessage } from '../../src-core/contract/desk-client.ts';
import type { DeskEvent } from '../../src-core/contract/events.ts';
import { buildWireText, readWireText } from '../../src-core/contract/wire-text.ts';
import { CHANNELS } from './channels.ts';

/** The part of Electron's ipcRenderer that the bridge needs. */
export interface WireRenderer {
  readonly invoke: (channel: string, value: unknown) => Promise<unknown>;
  readonly send: (channel: string, value: unknown) => void;
  readonly on: (channel: string, listener: (event: unknown, value: unknown) => void) => unknown;
}

/** What the page is given: three functions, and no way to any other channel. */
export interface Bridge {
  readonly request: (message: RequestMessage) => Promise<unknown>;
  readonly cancel: (job: string) => void;
  readonly subscribe: (listener: (event: DeskEvent) => void) => () => void;
}

/** The bridge over Electron's IPC. Electron's own objects stay on this side. */
export function buildBridge(ipc: WireRenderer): Bridge {
  const listeners = new Set<(event: DeskEvent) => void>();
  ipc.on(CHANNELS.event, (_, text) => {
    const event = readWireText(String(text)) as DeskEvent;
    for (const listener of listeners) listener(event);
  });
  return {
    request: async (message) =>
      readWireText(String(await ipc.invoke(CHANNELS.request, buildWireText(message)))),
    cancel: (job) => ipc.send(CHANNELS.cancel, String(job)),
    subscribe: (listener) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
  };
}
