import { buildDeskClient, type DeskClient } from '../../src-core/contract/desk-client.ts';
import { openLoopbackWire } from './loopback-wire.ts';
import { findShellWire } from './shell-wire.ts';

/** The client of this page, over whichever wire it has. Open one a page. */
export function openClient(): DeskClient {
  return buildDeskClient(findShellWire() ?? openLoopbackWire());
}
