import { randomBytes } from 'node:crypto';
import { readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { buildPagePolicy, PAGE_HEADERS } from './page-policy.ts';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.ico': 'image/x-icon',
  '.woff2': 'font/woff2',
  '.wasm': 'application/wasm',
};

/** Stands in the page where the nonce of this very answer is put. */
const NONCE_PLACE = '__CSP_NONCE__';

/** The built page, ready to be given. */
export interface PageFiles {
  /** The answer to a path of an address; null where the page has no such file. */
  readonly answer: (pathname: string) => Promise<Response | null>;
}

/**
 * The files of a built page. They are listed once, and only what was listed is ever given: no address, however
 * written, leads to any other file. Null where the page was not built.
 */
export async function openPageFiles(folder: string): Promise<PageFiles | null> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const files = new Map<string, string>();
  for (const entry of entries) {
    if (!entry.isFile()) continue;
    const file = path.join(entry.parentPath, entry.name);
    files.set(`/${path.relative(folder, file).split(path.sep).join('/')}`, file);
  }
  if (!files.has('/index.html')) return null;
  return {
    answer: async (pathname) => {
      const file = files.get(pathname === '/' ? '/index.html' : pathname);
      const bytes = file === undefined ? null : await readFile(file).catch(() => null);
      if (file === undefined || bytes === null) return null;
      return file.endsWith('.html') ? answerPage(bytes.toString('utf8')) : answerAsset(file, bytes);
    },
  };
}

function answerPage(text: string): Response {
  const nonce = randomBytes(16).toString('base64');
  return new Response(text.replaceAll(NONCE_PLACE, nonce), {
    headers: {
      ...PAGE_HEADERS,
      'content-type': TYPES['.html'] ?? '',
      'content-security-policy': buildPagePolicy(nonce),
      'cache-control': 'no-store',
    },
  });
}

/** The build names assets by their content, so that a browser may keep them, and the code it has made of them. */
function answerAsset(file: string, bytes: Buffer): Response {
  return new Response(Uint8Array.from(bytes), {
    headers: {
      ...PAGE_HEADERS,
      'content-type': TYPES[path.extname(file)] ?? 'application/octet-stream',
      'cache-control': 'private, max-age=31536000, immutable',
    },
  });
}
