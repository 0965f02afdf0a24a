import type { DeskEvent } from '../../src-core/contract/events.ts';
import { buildWireText, readWireText } from '../../src-core/contract/wire-text.ts';
import { type Face, type FaceHost, openFace } from '../../src-core/host/desk/face.ts';
import { CHANNELS } from '../preload/channels.ts';
import { isTrustedSender, type SenderFrame } from './locks.ts';

/** The part of a window's contents that the wire needs; Electron's WebContents is one. */
export interface WireContents {
  readonly id: number;
  readonly isDestroyed: () => boolean;
  readonly send: (channel: string, ...values: unknown[]) => void;
  readonly once: (event: 'destroyed', listener: () => void) => unknown;
}

/** What comes with every message of a page. */
export interface WireEvent {
  readonly sender: WireContents;
  readonly senderFrame: SenderFrame | null;
}

/** The part of Electron's ipcMain that the wire needs. */
export interface WireMain {
  readonly handle: (channel: string, listener: (event: WireEvent, value: unknown) => unknown) => void;
  readonly on: (channel: string, listener: (event: WireEvent, value: unknown) => void) => unknown;
}

/** The windows' faces. */
export interface ShellWire {
  /** Tells one window. */
  readonly tell: (contents: WireContents, event: DeskEvent) => void;
}

/**
 * Puts the calls behind the channels of the preload. A message from anything but our own page's main frame is
 * refused before it is looked at. All goes as text, as over the other wires.
 */
export function openShellWire(
  host: FaceHost,
  ipc: WireMain,
  onDropped: (paths: readonly string[], contents: WireContents) => void,
): ShellWire {
  const faces = new Map<number, Face>();
  const getFace = (contents: WireContents): Face => {
    const known = faces.get(contents.id);
    if (known) return known;
    const face = openFace(host);
    faces.set(contents.id, face);
    face.subscribe((event) => {
      if (!contents.isDestroyed()) contents.send(CHANNELS.event, buildWireText(event));
    });
    contents.once('destroyed', () => {
      face.close();
      faces.delete(contents.id);
    });
    return face;
  };
  const refuseStrangers = ({ senderFrame }: WireEvent) => {
    if (!isTrustedSender(senderFrame)) throw new Error('refused');
  };
  ipc.handle(CHANNELS.request, async (event, message) => {
    refuseStrangers(event);
    return buildWireText(await getFace(event.sender).request(readWireText(String(message))));
  });
  ipc.on(CHANNELS.cancel, (event, job) => {
    if (isTrustedSender(event.senderFrame)) getFace(event.sender).cancel(job);
  });
  ipc.on(CHANNELS.dropped, (event, paths) => {
    if (!isTrustedSender(event.senderFrame) || !Array.isArray(paths)) return;
    const named = paths.filter((path): path is string => typeof path === 'string' && path !== '');
    if (named.length > 0) onDropped(named.slice(0, 100), event.sender);
  });
  return { tell: (contents, event) => getFace(contents).tell(event) };
}
