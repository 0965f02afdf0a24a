import { open } from 'node:fs/promises';
import { Readable } from 'node:stream';
import type { OpenLessons } from '../desk/open-lessons.ts';
import { readByteRange } from './byte-range.ts';
import { getProxyFile } from './proxy.ts';
import { readStill } from './still.ts';

/** What is asked of the media: clips go by opaque ids, never by path. */
const ADDRESS = /^\/media\/([0-9a-f]{16})\/([0-9a-f]{16}(?:-\d{1,4})?)\/(film|proxy|still)$/;

/**
 * Longest part of a film in one answer. A browser keeps few connections to one place: four films side by side must
 * not hold them all, so each answer ends soon and the next part is asked for when it is needed.
 */
const LONGEST_PART = 4 * 1024 * 1024;

const TYPES: Readonly<Record<string, string>> = {
  mp4: 'video/mp4',
  // Browsers play QuickTime files whose contents they know, under the name of their nearest kin.
  quicktime: 'video/mp4',
  matroska: 'video/x-matroska',
  webm: 'video/webm',
  avi: 'video/x-msvideo',
  jpeg: 'image/jpeg',
  heic: 'image/heic',
  png: 'image/png',
};

/** Pupils' pictures are not left in a browser's store. */
const PRIVATE = { 'cache-control': 'private, no-store', 'x-content-type-options': 'nosniff' };

/** Answers a request for a clip's film, proxy or still; null where the address is none of these. */
export async function answerMedia(lessons: OpenLessons, request: Request): Promise<Response | null> {
  const url = new URL(request.url);
  const [, lesson, clip, what] = ADDRESS.exec(url.pathname) ?? [];
  if (lesson === undefined || clip === undefined) return null;
  const session = await lessons.find(lesson);
  const file = session?.findClipFile(clip);
  if (!session || !file) return refuse(404);
  if (what === 'still') return answerStill({ folder: session.folder, clip, file }, url.searchParams);
  if (what === 'proxy') return answerFile(getProxyFile(session.folder, clip), 'video/mp4', request);
  const container = session.getView().clips.find(({ id }) => id === clip)?.container ?? '';
  return answerFile(file, TYPES[container] ?? 'application/octet-stream', request);
}

async function answerStill(
  of: { readonly folder: string; readonly clip: string; readonly file: string },
  asked: URLSearchParams,
): Promise<Response> {
  const atMs = readNumber(asked.get('ms'), 0, 86_400_000);
  const height = readNumber(asked.get('height'), 48, 1080);
  if (atMs === null || height === null) return refuse(400);
  const still = await readStill({ ...of, atMs, height });
  if (!still) return refuse(404);
  return new Response(Uint8Array.from(still), { headers: { ...PRIVATE, 'content-type': 'image/jpeg' } });
}

function readNumber(text: string | null, least: number, most: number): number | null {
  if (text === null || !/^\d{1,9}$/.test(text)) return null;
  const value = Number(text);
  return value >= least && value <= most ? value : null;
}

async function answerFile(file: string, type: string, request: Request): Promise<Response> {
  const handle = await open(file, 'r').catch(() => null);
  if (!handle) return refuse(404);
  const { size } = await handle.stat();
  const range = readByteRange(request.headers.get('range'), size, LONGEST_PART);
  const headers = { ...PRIVATE, 'content-type': type, 'accept-ranges': 'bytes' };
  if (range.kind === 'outside' || request.method === 'HEAD' || size === 0) {
    await handle.close();
    if (range.kind === 'outside')
      return new Response(null, { status: 416, headers: { ...headers, 'content-range': `bytes */${size}` } });
    return new Response(null, { headers: { ...headers, 'content-length': String(size) } });
  }
  const [start, end] = range.kind === 'part' ? [range.from, range.to] : [0, size - 1];
  const bytes = Readable.toWeb(handle.createReadStream({ start, end })) as ReadableStream<Uint8Array>;
  const part = range.kind === 'part' ? { 'content-range': `bytes ${start}-${end}/${size}` } : {};
  return new Response(bytes, {
    status: range.kind === 'part' ? 206 : 200,
    headers: { ...headers, ...part, 'content-length': String(end - start + 1) },
  });
}

function refuse(status: number): Response {
  return new Response(null, { status, headers: PRIVATE });
}
