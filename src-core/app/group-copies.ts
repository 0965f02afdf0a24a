import type { ClipId } from '../matching/observation.ts';
import { groupBy } from '../platform/group-by.ts';
import type { HeldFile } from './clip-reading.ts';
import type { FileReading, LessonPorts } from './ports.ts';

/** A file that could be read. */
export interface ReadFile {
  readonly held: HeldFile;
  readonly reading: FileReading;
}

/** All copies of one recording. */
export interface CopyGroup {
  readonly id: ClipId;
  readonly copies: readonly HeldFile[];
  readonly reading: FileReading;
}

/** Hex digits of a clip's id: enough that a school never sees two alike. */
const ID_LENGTH = 16;

/**
 * Brings copies of one recording together by content, whatever their names. Files with equal fingerprints are
 * compared in full; where they differ after all, the ids get a running number.
 */
export async function groupCopies(
  files: readonly ReadFile[],
  readFullHash: LessonPorts['readFullHash'],
): Promise<readonly CopyGroup[]> {
  const groups: CopyGroup[] = [];
  for (const [sampleHash, alike] of groupBy(files, ({ reading }) => reading.sampleHash)) {
    const id = sampleHash.slice(0, ID_LENGTH);
    const contents = alike.length === 1 ? [alike] : await splitByContent(alike, readFullHash);
    contents.forEach((same, index) => {
      const [first] = same;
      if (!first) return;
      groups.push({
        id: index === 0 ? id : `${id}-${index + 1}`,
        copies: same.map(({ held }) => held),
        reading: first.reading,
      });
    });
  }
  return groups;
}

/** Contents in the order of their full hashes, so that ids do not depend on the order of the files. */
async function splitByContent(
  alike: readonly ReadFile[],
  readFullHash: LessonPorts['readFullHash'],
): Promise<readonly (readonly ReadFile[])[]> {
  const hashed = await Promise.all(
    alike.map(async (file) => {
      const { path } = file.held.file;
      // What cannot be compared is nobody's copy; it is listed last, so that it never takes the others' ids.
      return { file, fullHash: (await readFullHash(path)) ?? `unread ${path}` };
    }),
  );
  return [...groupBy(hashed, ({ fullHash }) => fullHash)]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([, same]) => same.map(({ file }) => file));
}
