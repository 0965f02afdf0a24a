import { randomUUID } from 'node:crypto';
import type { Wire } from '../../src-core/contract/desk-client.ts';
import { buildWireText, readWireText } from '../../src-core/contract/wire-text.ts';
import type { Face } from '../../src-core/host/desk/face.ts';

/** A wire without a gap, for whoever carries the host within: all goes as text, as elsewhere. */
export function openInProcessWire(face: Face): Wire {
  const pass = (value: unknown) => readWireText(buildWireText(value));
  return {
    request: async (message) => pass(await face.request(pass(message))),
    cancel: face.cancel,
    subscribe: face.subscribe,
    newJob: () => randomUUID(),
  };
}
