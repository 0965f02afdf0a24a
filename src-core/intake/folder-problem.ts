/** A file that is gone, may not be opened, or lies where the disk is worn. */
export interface UnreadableFile {
  readonly code: 'file-unreadable';
  readonly path: string;
}

/** What a scan met that is not a clip, by path below the scanned folder. */
export type FolderProblem =
  | { readonly code: 'path-missing'; readonly path: string }
  | { readonly code: 'clips-folder-missing'; readonly path: string }
  | { readonly code: 'folder-without-clips'; readonly path: string }
  | { readonly code: 'folder-unreadable'; readonly path: string }
  | { readonly code: 'folder-too-deep'; readonly path: string }
  | { readonly code: 'link-not-followed'; readonly path: string }
  | { readonly code: 'file-not-a-clip'; readonly path: string }
  | { readonly code: 'file-vanished'; readonly path: string }
  | UnreadableFile;
