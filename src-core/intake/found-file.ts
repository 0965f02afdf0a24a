import type { EpochMs } from '../platform/units.ts';

/** A file as the disk lists it, before anything is read from it. */
export interface FoundFile {
  /** Path below the folder that was scanned, with `/` between the parts; unique. */
  readonly path: string;
  readonly name: string;
  readonly sizeBytes: number;
  readonly modifiedMs: EpochMs;
}

/** What a file is taken for by its name alone. */
export type FileRole = 'clip' | 'companion' | 'other';

const CLIP_ENDINGS = new Set(
  'mp4 m4v mov qt 3gp 3g2 mkv webm avi mts m2ts mpg mpeg wmv jpg jpeg heic heif png gif'.split(' '),
);
const COMPANION_ENDINGS = new Set(
  'aae xmp thm srt lrv json xml txt db ini ds_store nomedia plist tmp'.split(' '),
);

/**
 * `clip`: video or still by its ending, or no ending at all. `companion`: what tablets and computers put beside
 * clips (hidden files, edits, thumbnails, indexes); left alone without a word. `other`: reported, not read.
 */
export function getFileRole(name: string): FileRole {
  const dot = name.lastIndexOf('.');
  const ending = name.slice(dot + 1).toLowerCase();
  if (dot === 0 || name.startsWith('.')) return 'companion';
  if (dot < 0 || CLIP_ENDINGS.has(ending)) return 'clip';
  return COMPANION_ENDINGS.has(ending) ? 'companion' : 'other';
}
