import type { Seconds } from '../platform/units.ts';

/** Why a clip's pictures could not be decoded, or not all of them. Whatever was decoded before stays valid. */
export type DecodeProblem =
  /** No program that answers as ffmpeg was found; `tried` are the places, best first. */
  | { readonly code: 'ffmpeg-missing'; readonly tried: readonly string[] }
  /** Not one picture came; `detail` is ffmpeg's last complaint, in its own words, possibly empty. */
  | { readonly code: 'decode-failed'; readonly detail: string }
  /** Pictures came, but fewer than the file promises; `lastSeconds` is the last one's time in the clip. */
  | { readonly code: 'decode-cut-short'; readonly lastSeconds: Seconds; readonly detail: string }
  /** The system or somebody else ended ffmpeg, or kept it from the file: says nothing of the clip. */
  | { readonly code: 'decode-interrupted'; readonly detail: string }
  /** ffmpeg was stopped because it took longer than it was given. */
  | { readonly code: 'decode-timed-out'; readonly limitSeconds: Seconds }
  /** Somebody asked for the work to stop. */
  | { readonly code: 'decode-cancelled' };
