import { access, mkdir, readFile, unlink } from 'node:fs/promises';
import path from 'node:path';
import type { z } from 'zod';
import { writeFileAtomically } from './atomic-write.ts';

/**
 * One kind of entry of the evidence cache. Its version counts up when the same clip would give another entry;
 * older entries are then made anew, and those of the other analysers stay.
 */
export interface Analyser<Value> {
  /** Part of the entry's file name; a plain word. */
  readonly name: string;
  readonly version: number;
  readonly ending: 'json' | 'bin';
  readonly encode: (value: Value) => string | Uint8Array;
  /** Null: not an entry of this version, or damaged. */
  readonly decode: (bytes: Buffer) => Value | null;
}

/** What is known of each content, kept beside the lesson or anywhere else; may be deleted at any time. */
export interface EvidenceCache {
  /** Null: not looked at yet, or by an older analyser, or the entry is damaged. */
  readonly read: <Value>(contentId: string, analyser: Analyser<Value>) => Promise<Value | null>;
  /** Whether an entry is there, of whatever version. */
  readonly has: (contentId: string, analyser: Pick<Analyser<never>, 'name' | 'ending'>) => Promise<boolean>;
  /** Never fails: it is a cache. An entry appears whole or not at all, also where two processes write at once. */
  readonly write: <Value>(contentId: string, analyser: Analyser<Value>, value: Value) => Promise<void>;
  /** Takes an entry away; never fails, whether it was there or not. */
  readonly drop: (contentId: string, analyser: Pick<Analyser<never>, 'name' | 'ending'>) => Promise<void>;
}

/** The cache in this folder, which is made with the first entry. */
export function openEvidenceCache(folder: string): EvidenceCache {
  const getFile = (contentId: string, { name, ending }: Pick<Analyser<never>, 'name' | 'ending'>) =>
    path.join(folder, `${contentId}.${name}.${ending}`);
  return {
    read: async (contentId, analyser) => {
      const bytes = await readFile(getFile(contentId, analyser)).catch(() => null);
      return bytes && analyser.decode(bytes);
    },
    has: async (contentId, analyser) =>
      access(getFile(contentId, analyser)).then(
        () => true,
        () => false,
      ),
    write: async (contentId, analyser, value) => {
      // Only the folder itself: where the lesson's own has gone with its stick, nothing may be made in its place.
      await mkdir(folder).catch(() => {});
      await writeFileAtomically(getFile(contentId, analyser), analyser.encode(value));
    },
    drop: (contentId, analyser) => unlink(getFile(contentId, analyser)).catch(() => {}),
  };
}

/** An analyser whose entries are JSON, checked by a schema when read. */
export function defineJsonAnalyser<Value>(
  name: string,
  version: number,
  schema: z.ZodType<Value>,
): Analyser<Value> {
  return {
    name,
    version,
    ending: 'json',
    encode: (value) => `${JSON.stringify({ analyser: version, value })}\n`,
    decode: (bytes) => {
      const entry = parseJson(bytes.toString('utf8'));
      if (entry?.analyser !== version) return null;
      const parsed = schema.safeParse(entry.value);
      return parsed.success ? parsed.data : null;
    },
  };
}

/** How a value becomes bytes: a small head in words, and parts in bytes. */
export interface Packing<Value, Head> {
  readonly head: z.ZodType<Head>;
  readonly pack: (value: Value) => { readonly head: Head; readonly parts: readonly Uint8Array[] };
  /** Null: head and parts do not fit each other. The parts may be kept. */
  readonly unpack: (head: Head, parts: readonly Uint8Array[]) => Value | null;
}

/** An analyser whose entries are mostly bytes: one line of JSON with the head and the parts' lengths, then the parts. */
export function definePackedAnalyser<Value, Head>(
  name: string,
  version: number,
  { head: schema, pack, unpack }: Packing<Value, Head>,
): Analyser<Value> {
  return {
    name,
    version,
    ending: 'bin',
    encode: (value) => {
      const { head, parts } = pack(value);
      const lengths = parts.map(({ length }) => length);
      const line = `${JSON.stringify({ analyser: version, lengths, head })}\n`;
      return Buffer.concat([Buffer.from(line, 'utf8'), ...parts]);
    },
    decode: (bytes) => {
      const end = bytes.indexOf('\n');
      const entry = parseJson(bytes.toString('utf8', 0, Math.max(0, end)));
      if (entry?.analyser !== version) return null;
      const head = schema.safeParse(entry.head);
      const parts = cutParts(bytes.subarray(end + 1), entry.lengths);
      return head.success && parts ? unpack(head.data, parts) : null;
    },
  };
}

/** Copies, so that each part begins where numbers of any width may be read. */
function cutParts(bytes: Buffer, lengths: unknown): Uint8Array[] | null {
  if (!Array.isArray(lengths)) return null;
  const parts: Uint8Array[] = [];
  let at = 0;
  for (const length of lengths) {
    if (typeof length !== 'number' || at + length > bytes.length) return null;
    parts.push(Uint8Array.from(bytes.subarray(at, at + length)));
    at += length;
  }
  return at === bytes.length ? parts : null;
}

function parseJson(text: string): Record<string, unknown> | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : null;
  } catch {
    return null;
  }
}
