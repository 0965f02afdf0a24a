// A served desk to be killed: opens the lesson given and serves it on the port given, to whom it has let in before or
// who opens the address that it writes to standard output.

import { writeSync } from 'node:fs';
import { openDesk } from '../../src-core/host/desk/desk.ts';
import { serveDesk } from '../../src-core/host/loopback/serve-desk.ts';

const [folder = '', home = '', pageFolder = '', port = '0'] = process.argv.slice(2);
const desk = await openDesk({
  face: 'browser',
  version: '0.0.0',
  home,
  chooseFolders: null,
  filmDemo: async () => {},
  onFault: () => process.exit(5),
});
const opened = await desk.openFirst(folder);
if (!opened.ok) process.exit(3);
const served = await serveDesk(desk, { port: Number(port), pageFolder });
// The page's storage belongs to the port, so another one will not do.
if (port !== '0' && served.port !== Number(port)) process.exit(4);
writeSync(1, `${served.port} ${served.makeAddress()}\n`);
