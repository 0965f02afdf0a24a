/** Why a file's bytes could not be read, or not all of them. */
export type MediaProblem =
  | { readonly code: 'media-empty' }
  | { readonly code: 'media-unknown-kind' }
  | { readonly code: 'media-cut-short'; readonly missingBytes: number | null }
  | { readonly code: 'media-no-index' }
  | { readonly code: 'media-malformed'; readonly at: number; readonly part: string }
  | { readonly code: 'media-version-unsupported'; readonly part: string; readonly version: number }
  | { readonly code: 'media-no-picture' };
