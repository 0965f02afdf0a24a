/** Why a file's bytes could not be read, or not all of them. */
export type MediaProblem =
  /** Nothing in it: zero bytes. */
  | { readonly code: 'media-empty' }
  /** None of the kinds Routemark reads, judged by the first bytes and never by the file's name. */
  | { readonly code: 'media-unknown-kind' }
  /** A part says it is longer than the file: copied or recorded only in part. Null: how much is not known. */
  | { readonly code: 'media-cut-short'; readonly missingBytes: number | null }
  /** Pictures may be there, but the part that describes them is not (a recording that was never closed). */
  | { readonly code: 'media-no-index' }
  /** A part contradicts the format; `at` is its offset in bytes, `part` its four letters or element's name. */
  | { readonly code: 'media-malformed'; readonly at: number; readonly part: string }
  /** A part in a version that its standard does not define. */
  | { readonly code: 'media-version-unsupported'; readonly part: string; readonly version: number }
  /** Reading stopped at the reading limits of `bounded-bytes.ts`: more parts than any camera writes. */
  | { readonly code: 'media-reading-limit' }
  /** A readable file without any moving or still picture (sound alone, say). */
  | { readonly code: 'media-no-picture' };
