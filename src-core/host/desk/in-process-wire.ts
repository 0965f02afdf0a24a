import { randomUUID } from 'node:crypto';
import type { Wire } from '../../contract/desk-client.ts';
import { buildWireText, readWireText } from '../../contract/wire-text.ts';
import type { Face } from './face.ts';

/** A wire without a gap: for tests and programs that carry the host within themselves. All goes as text, as elsewhere. */
export function openInProcessWire(face: Face): Wire {
  const pass = (value: unknown) => readWireText(buildWireText(value));
  return {
    request: async (message) => pass(await face.request(pass(message))),
    cancel: face.cancel,
    subscribe: face.subscribe,
    newJob: () => randomUUID(),
  };
}
