import { randomBytes } from 'node:crypto';
import { readdir, realpath } from 'node:fs/promises';
import { homedir } from 'node:os';
import path from 'node:path';
import type { FolderRef, FolderToken } from '../../contract/desk-view.ts';
import { isWithin } from '../is-within.ts';
import { isLessonFolder } from './lesson-folder.ts';

/** The folders that a face may speak of: each was chosen by the teacher or lies in one of the places to begin at. */
export interface FolderTokens {
  /** A token for a folder; the same one each time. */
  readonly hand: (folder: string) => FolderRef;
  /** The folder that a token stands for, or null. */
  readonly find: (token: FolderToken) => string | null;
}

/** Hands out tokens that cannot be guessed. They end with the host. */
export function openFolderTokens(): FolderTokens {
  const byPath = new Map<string, FolderToken>();
  const byToken = new Map<FolderToken, string>();
  return {
    hand: (given) => {
      const folder = path.resolve(given);
      const token = byPath.get(folder) ?? `f-${randomBytes(16).toString('hex')}`;
      byPath.set(folder, token);
      byToken.set(token, folder);
      return { token, name: path.basename(folder) || folder, path: folder, isLesson: isLessonFolder(folder) };
    },
    find: (token) => byToken.get(token) ?? null,
  };
}

/** What one look into a folder gives. */
export interface FolderLook {
  readonly here: FolderRef | null;
  readonly parent: FolderRef | null;
  readonly folders: FolderRef[];
}

/** The most folders that one look gives; no teacher reads more. */
const MOST_FOLDERS = 2000;

/** The letters that Windows gives to drives and sticks. */
const DRIVES = [...'CDEFGHIJKLMNOPQRSTUVWXYZ'].map((letter) => `${letter}:\\`);

const collator = new Intl.Collator('en', { numeric: true, sensitivity: 'base' });

/** The places to begin at: home and what is usual in it, drives and sticks, and folders used before. */
export async function listPlaces(tokens: FolderTokens, recent: readonly string[]): Promise<FolderLook> {
  const home = homedir();
  const usual = ['Documents', 'Videos', 'Movies', 'Desktop', 'Downloads'].map((name) =>
    path.join(home, name),
  );
  const drives =
    process.platform === 'win32'
      ? DRIVES
      : (await Promise.all(listDriveParents().map((parent) => listNames(parent).catch(() => [])))).flat();
  const known = [...recent.map((folder) => path.dirname(folder)), ...usual, ...drives];
  const there = await Promise.all(known.map((folder) => realpath(folder).catch(() => null)));
  const places = new Set([home, ...there.filter((folder) => folder !== null)]);
  return { here: null, parent: null, folders: [...places].map(tokens.hand) };
}

/** The folders in a folder, by name; hidden ones and links are left out. Null: it cannot be read. */
export async function lookInto(
  tokens: FolderTokens,
  folder: string,
  begin: readonly string[],
): Promise<FolderLook | null> {
  const folders = await listNames(folder).catch(() => null);
  if (folders === null) return null;
  const parent = path.dirname(folder);
  // Upwards only as far as some place to begin at reaches: what lies above was never offered.
  const isBelow = begin.some((place) => folder !== place && isWithin(folder, place));
  return {
    here: tokens.hand(folder),
    parent: isBelow ? tokens.hand(parent) : null,
    folders: folders.slice(0, MOST_FOLDERS).map(tokens.hand),
  };
}

function listDriveParents(): readonly string[] {
  if (process.platform === 'darwin') return ['/Volumes'];
  const user = process.env.USER ?? '';
  return ['/mnt', '/media', ...(user === '' ? [] : [`/media/${user}`, `/run/media/${user}`])];
}

async function listNames(folder: string): Promise<readonly string[]> {
  const entries = await readdir(folder, { withFileTypes: true });
  return entries
    .filter((entry) => entry.isDirectory() && !entry.name.startsWith('.'))
    .map(({ name }) => name)
    .sort(collator.compare)
    .map((name) => path.join(folder, name));
}
