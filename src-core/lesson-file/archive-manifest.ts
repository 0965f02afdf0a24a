import * as z from 'zod';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';

/** The newest form of archive that is written and read here. */
const ARCHIVE_VERSION = 1;

/** Name of the list within the archive; no file of a lesson has it. */
export const MANIFEST_NAME = 'routemark-archive.json';

const manifestSchema = z.strictObject({
  format: z.literal('routemark-archive'),
  version: z.literal(ARCHIVE_VERSION),
  /** When it was made, ISO 8601 in UTC. */
  made: z.iso.datetime(),
  lesson: z.strictObject({ title: z.string(), className: z.string(), date: z.string() }),
  holdsClips: z.boolean(),
  files: z.array(
    z.strictObject({
      /** Below the lesson folder, with `/` between the parts. */
      path: z.string().min(1),
      bytes: z.int().min(0),
      sha256: z.string().regex(/^[0-9a-f]{64}$/),
      /** A clip without another date is dated by it. */
      modifiedMs: z.int(),
    }),
  ),
});

/** The list of an archive: every file of it, by which each is checked when it is restored. */
export type ArchiveManifest = z.infer<typeof manifestSchema>;

/** Why an archive was not made or not restored; `path` is the archive's unless said otherwise. */
export type ArchiveProblem =
  | { readonly code: 'archive-within-lesson'; readonly path: string }
  /** Something stands there already. */
  | { readonly code: 'archive-exists'; readonly path: string }
  /** `path` is a file of the lesson, a link or one whose name no archive can hold; or the folder of clips outside it. */
  | { readonly code: 'archive-left-out'; readonly path: string; readonly why: 'link' | 'name' | 'outside' }
  | { readonly code: 'archive-not-ours'; readonly path: string }
  | {
      readonly code: 'archive-newer';
      readonly path: string;
      readonly version: number;
      readonly newest: number;
    }
  /** Its end is missing, and with it the list of what it holds. */
  | { readonly code: 'archive-cut-short'; readonly path: string }
  /** These files are missing in it or are not what was put in; `whole` others are. */
  | {
      readonly code: 'archive-damaged';
      readonly path: string;
      readonly files: readonly string[];
      readonly whole: number;
    }
  /** It holds a name that would lead elsewhere, or that its list does not have. */
  | { readonly code: 'archive-unsafe'; readonly path: string; readonly name: string }
  /** `path` is where it was to be restored: something is there. */
  | { readonly code: 'restore-place-taken'; readonly path: string };

/** The manifest's text, as it stands in the archive. */
export function buildManifestText(manifest: Omit<ArchiveManifest, 'format' | 'version'>): string {
  const file: ArchiveManifest = { format: 'routemark-archive', version: ARCHIVE_VERSION, ...manifest };
  return `${JSON.stringify(file, null, 1)}\n`;
}

/** Reads a manifest. @param path the archive's own */
export function parseManifest(text: string, path: string): Outcome<ArchiveManifest, ArchiveProblem> {
  const raw = parseJson(text);
  const header = z.object({ format: z.literal('routemark-archive'), version: z.int() }).safeParse(raw);
  if (!header.success) return fail({ code: 'archive-not-ours', path });
  const { version } = header.data;
  if (version > ARCHIVE_VERSION)
    return fail({ code: 'archive-newer', path, version, newest: ARCHIVE_VERSION });
  const manifest = manifestSchema.safeParse(raw);
  if (!manifest.success) return fail({ code: 'archive-damaged', path, files: [MANIFEST_NAME], whole: 0 });
  return succeed(manifest.data);
}

function parseJson(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** What would lead out of a folder or steer a system: backslashes, colons, control characters, `.` and `..`. */
const BAD_PART = /^\.{0,2}$|[\p{Cc}\\:]/u;

/** Whether a name in an archive stays below the folder that it is unpacked into, on any system. */
export function isSafePath(path: string): boolean {
  return path.length <= 1000 && path.split('/').every((part) => !BAD_PART.test(part));
}

/**
 * The first name that must not be unpacked: one that leads elsewhere, one that the list does not have, or one that comes
 * twice. Null: all are well. @param names of what is in the archive, the list's own included
 */
export function findUnsafeName({ files }: ArchiveManifest, names: readonly string[]): string | null {
  const listed = new Set([MANIFEST_NAME, ...files.map(({ path }) => path)]);
  const isBad = (name: string, at: number) =>
    !isSafePath(name) || !listed.has(name) || names.indexOf(name) !== at;
  return names.find(isBad) ?? [...listed].find((path) => !isSafePath(path)) ?? null;
}
