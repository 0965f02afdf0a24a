import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { type Unzipped, unzipSync } from 'fflate';
import { type ClassListFiles, ONEROSTER_FILES } from '../app/import-roster.ts';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { RosterImportProblem } from '../lesson/roster/roster-import-problem.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { describeReadError } from './write-error.ts';

/** The most bytes of a class list, and of each file in an export, unpacked: a large district's stay well below. */
const MOST_BYTES = 20_000_000;

type ClassListOutcome = Outcome<ClassListFiles, RosterImportProblem | StorageProblem | FolderProblem>;

/**
 * Reads a class list from where it lies: a CSV file, a zip file of a OneRoster export, a folder that holds such an
 * export, or a folder with one of these alone in it.
 */
export async function readClassListFiles(place: string): Promise<ClassListOutcome> {
  try {
    if ((await stat(place)).isFile()) return await readOneFile(place);
    const names = (await readdir(place, { withFileTypes: true }))
      .filter((entry) => entry.isFile() && !entry.name.startsWith('.'))
      .map(({ name }) => name);
    if (names.includes('manifest.csv')) return await readFolder(place, names);
    const [only, ...others] = names.filter((name) => /\.(csv|zip)$/i.test(name));
    return only !== undefined && others.length === 0
      ? await readOneFile(path.join(place, only))
      : fail({ code: 'import-unreadable', name: path.basename(place) });
  } catch (error) {
    const isMissing = (error as NodeJS.ErrnoException).code === 'ENOENT';
    return fail(isMissing ? { code: 'path-missing', path: place } : describeReadError(error, place));
  }
}

async function readOneFile(file: string): Promise<ClassListOutcome> {
  const name = path.basename(file);
  if ((await stat(file)).size > MOST_BYTES) {
    return fail({ code: 'import-too-large', name, limitBytes: MOST_BYTES });
  }
  const bytes = await readFile(file);
  return isZip(bytes) ? readZip(bytes, name) : succeed({ kind: 'csv', name, text: decode(bytes) });
}

/** A local file header or an empty archive's end (PKWARE APPNOTE.TXT, 4.3.7 and 4.3.16). */
function isZip(bytes: Uint8Array): boolean {
  return bytes[0] === 0x50 && bytes[1] === 0x4b && (bytes[2] === 3 || bytes[2] === 5);
}

function readZip(bytes: Uint8Array, name: string): ClassListOutcome {
  let isTooLarge = false;
  let unzipped: Unzipped;
  try {
    unzipped = unzipSync(bytes, {
      // Files stand at the root of the archive (1EdTech OneRoster CSV Binding, section 3); the rest is not unpacked.
      filter: (file) => {
        const isWanted = ONEROSTER_FILES.includes(file.name);
        if (isWanted && file.originalSize > MOST_BYTES) isTooLarge = true;
        return isWanted && !isTooLarge;
      },
    });
  } catch {
    return fail({ code: 'import-unreadable', name });
  }
  if (isTooLarge) return fail({ code: 'import-too-large', name, limitBytes: MOST_BYTES });
  const files = new Map(Object.entries(unzipped).map(([inner, content]) => [inner, decode(content)]));
  return files.size === 0 ? fail({ code: 'import-unreadable', name }) : succeed({ kind: 'oneroster', files });
}

async function readFolder(folder: string, names: readonly string[]): Promise<ClassListOutcome> {
  const files = new Map<string, string>();
  for (const name of ONEROSTER_FILES.filter((one) => names.includes(one))) {
    const file = path.join(folder, name);
    if ((await stat(file)).size > MOST_BYTES) {
      return fail({ code: 'import-too-large', name, limitBytes: MOST_BYTES });
    }
    files.set(name, decode(await readFile(file)));
  }
  return succeed({ kind: 'oneroster', files });
}

/** What is not UTF-8 becomes U+FFFD, which the reading then names. */
function decode(bytes: Uint8Array): string {
  return new TextDecoder('utf-8').decode(bytes);
}
