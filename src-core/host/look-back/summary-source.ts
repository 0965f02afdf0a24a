import { createHash } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import type { SummarySource } from '../../app/look-back.ts';

/** Where a lesson lies: its folder, and the folder of its clips. */
export interface SummaryPlace {
  readonly folder: string;
  readonly clipsFolder: string;
}

const RECORDS = ['plan.json', 'roster.csv', 'marks.jsonl'];

/** Reads what a lesson's figures would be made from now; opens no clip, lists no evidence, and never fails. */
export async function readFilesSource({
  folder,
  clipsFolder,
}: SummaryPlace): Promise<Pick<SummarySource, 'records' | 'clips' | 'files'>> {
  const records = await Promise.all(
    RECORDS.map((name) => readFile(path.join(folder, name)).catch(() => null)),
  );
  const entries = await readdir(clipsFolder, { recursive: true, withFileTypes: true }).catch(() => []);
  const names = entries
    .filter((entry) => entry.isFile())
    .map(({ parentPath, name }) => `${parentPath.slice(clipsFolder.length)}/${name}`);
  const hash = createHash('sha256');
  for (const bytes of records) hash.update(`${bytes?.length ?? 'none'}\n`).update(bytes ?? '');
  return {
    records: hash.digest('hex').slice(0, 32),
    clips: createHash('sha256').update(JSON.stringify(names.sort())).digest('hex').slice(0, 32),
    files: names.length,
  };
}

/** Counts the clips that were looked into and watched, by the names in the evidence. */
export async function countSeen(folder: string): Promise<Pick<SummarySource, 'looked' | 'watched'>> {
  const names = await readdir(path.join(folder, 'evidence')).catch(() => []);
  return {
    looked: names.filter((name) => name.endsWith('.cards.json')).length,
    watched: names.filter((name) => name.endsWith('.watch.json')).length,
  };
}
