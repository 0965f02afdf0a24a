import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { SummarySource } from '../../app/look-back.ts';

/** Where a lesson lies: its folder, and the folder of its clips. */
export interface SummaryPlace {
  readonly folder: string;
  readonly clipsFolder: string;
}

/** What a lesson's figures would be made from now. */
export interface PresentSource extends SummarySource {
  /** Whether any file lies below the folder of clips. */
  readonly hasClips: boolean;
}

const RECORDS = ['plan.json', 'roster.csv', 'marks.jsonl'];

/** Reads what the figures of a lesson depend on; opens no clip and no evidence, and never fails. */
export async function readSummarySource({ folder, clipsFolder }: SummaryPlace): Promise<PresentSource> {
  const records = await Promise.all(
    RECORDS.map((name) => readFile(path.join(folder, name)).catch(() => null)),
  );
  const clips = await readdir(clipsFolder, { recursive: true, withFileTypes: true }).catch(() => []);
  const files = clips.filter((entry) => entry.isFile());
  const evidence = await readdir(path.join(folder, 'evidence')).catch(() => []);
  const seen = ['.cards.json', '.watch.json'].map(
    (ending) => evidence.filter((name) => name.endsWith(ending)).length,
  );
  const hash = createHash('sha256');
  for (const bytes of records) hash.update(`${bytes?.length ?? 'none'}\n`).update(bytes ?? '');
  const names = files.map(({ parentPath, name }) => path.relative(clipsFolder, path.join(parentPath, name)));
  return {
    records: hash.digest('hex').slice(0, 32),
    clips: createHash('sha256')
      .update(JSON.stringify([names.sort(), seen]))
      .digest('hex')
      .slice(0, 32),
    hasClips: files.length > 0,
  };
}
