import { readdir, readFile, stat } from 'node:fs/promises';
import path from 'node:path';
import { type UnzipFileInfo, unzipSync } from 'fflate';
import type { Bundle, BundleFile } from '../gradebook/oneroster/check-bundle.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';

/** Why a set of files could not be read at all. */
type ReadBundleProblem =
  | { readonly code: 'bundle-unreadable'; readonly name: string }
  | { readonly code: 'bundle-too-large'; readonly name: string; readonly limitBytes: number };

/** More than a large district's set unpacked; guards the memory against an archive made to fill it. */
const LIMIT_BYTES = 256 * 1024 * 1024;

const PACKINGS: Readonly<Record<number, BundleFile['packing']>> = { 0: 'stored', 8: 'deflated' };

/** A set of OneRoster files from a zip archive or a folder. Hidden files, and what systems leave in archives, are passed over. */
export async function readBundle(place: string): Promise<Outcome<Bundle, ReadBundleProblem>> {
  const name = path.basename(place);
  const found = await stat(place).catch(() => null);
  if (!found) return fail({ code: 'bundle-unreadable', name });
  if (found.size > LIMIT_BYTES) return fail({ code: 'bundle-too-large', name, limitBytes: LIMIT_BYTES });
  return found.isDirectory() ? readFolder(place, name) : readArchive(await readFile(place), name);
}

async function readFolder(place: string, name: string): Promise<Outcome<Bundle, ReadBundleProblem>> {
  const entries = await readdir(place, { withFileTypes: true });
  const names = entries
    .filter((entry) => entry.isFile() && !isLeftover(entry.name))
    .map((entry) => entry.name);
  const sizes = await Promise.all(names.map(async (file) => (await stat(path.join(place, file))).size));
  if (sizes.reduce((sum, bytes) => sum + bytes, 0) > LIMIT_BYTES) {
    return fail({ code: 'bundle-too-large', name, limitBytes: LIMIT_BYTES });
  }
  const files = await Promise.all(
    names.map(
      async (file): Promise<BundleFile> => ({
        path: file,
        text: await readFile(path.join(place, file), 'utf8'),
        packing: null,
      }),
    ),
  );
  return succeed({ name, isArchive: false, files });
}

function readArchive(bytes: Uint8Array, name: string): Outcome<Bundle, ReadBundleProblem> {
  const packings = new Map<string, BundleFile['packing']>();
  let total = 0;
  const isWanted = ({ name: entry, originalSize, compression }: UnzipFileInfo) => {
    if (entry.endsWith('/') || isLeftover(entry)) return false;
    const packing = PACKINGS[compression] ?? 'other';
    packings.set(entry, packing);
    total += originalSize;
    return packing !== 'other' && total <= LIMIT_BYTES;
  };
  try {
    const contents = unzipSync(bytes, { filter: isWanted });
    if (total > LIMIT_BYTES) return fail({ code: 'bundle-too-large', name, limitBytes: LIMIT_BYTES });
    const files = [...packings].map(([entry, packing]): BundleFile => {
      return { path: entry, text: Buffer.from(contents[entry] ?? []).toString('utf8'), packing };
    });
    return succeed({ name, isArchive: true, files });
  } catch {
    // fflate throws on anything that is not a whole archive.
    return fail({ code: 'bundle-unreadable', name });
  }
}

function isLeftover(file: string): boolean {
  return file.startsWith('__MACOSX/') || path.posix.basename(file).startsWith('.');
}
