// A desk to be killed: opens the lesson given as its argument and decides over its in-process wire without end,
// naming each decision on standard output as soon as it is acknowledged.

import { writeSync } from 'node:fs';
import { monotonicFactory } from 'ulid';
import { buildDeskClient } from '../../src-core/contract/desk-client.ts';
import { openDesk } from '../../src-core/host/desk/desk.ts';
import { openFace } from '../../src-core/host/desk/face.ts';
import { openInProcessWire } from '../../src-core/host/desk/in-process-wire.ts';

const [folder = '', home = ''] = process.argv.slice(2);
const nextId = monotonicFactory();
const desk = await openDesk({
  face: 'browser',
  version: '0.0.0',
  home,
  chooseFolders: null,
  filmDemo: async () => {},
  onFault: () => process.exit(5),
});
const client = buildDeskClient(openInProcessWire(openFace(desk)));
const opened = await client.request('openLesson', { folder: desk.tokens.hand(folder).token });
if (!opened.ok || opened.value.update.kind !== 'whole') process.exit(3);
const { lesson } = opened.value.update.view;

for (let n = 0; ; n += 1) {
  const id = nextId();
  const note = { kind: 'clip-noted', clip: `clip-${n % 50}`, text: `note ${n}` } as const;
  const entries = [{ id, act: note }];
  const reply = await client.request('decide', { lesson, since: null, who: 'teacher', entries });
  if (!reply.ok) process.exit(4);
  for (const acknowledged of reply.value.acknowledged) writeSync(1, `${acknowledged}\n`);
}
