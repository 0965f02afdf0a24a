import type { LessonId } from './desk-view.ts';

/** Why a face's request was not carried out, whatever it asked for. */
export type CallProblem =
  /** No call of that name: page and host are of different versions, or something else is talking. */
  | { readonly code: 'call-unknown'; readonly name: string }
  /** The input is not what the call takes; `path` is where, such as `entries[0].act.kind`. */
  | { readonly code: 'call-malformed'; readonly name: string; readonly path: string }
  /** Stopped by a cancel; what was finished before stays. */
  | { readonly code: 'call-cancelled' }
  /** A fault of the program; `trace` finds it in the host's own log. */
  | { readonly code: 'program-fault'; readonly trace: string }
  /** The host does not answer: it was closed, or is being started. Nothing that was acknowledged is lost. */
  | { readonly code: 'desk-unreachable' }
  /** A folder token that is not, or no longer, the host's. */
  | { readonly code: 'folder-unknown' }
  /** This window has no folder dialog of the system: list folders instead. */
  | { readonly code: 'no-folder-dialog' }
  | { readonly code: 'lesson-unknown' }
  /** A second marking holds answers, notes and squad marks alone, and changes nothing else of its lesson. */
  | { readonly code: 'second-marking-only' }
  /** A name without a letter or digit, by which no second marker can be told. */
  | { readonly code: 'marker-name-bad' }
  /** The open lesson's folder is not there now: a stick was pulled out, a share is away. Nothing was written. */
  | { readonly code: 'lesson-away'; readonly path: string }
  /** Another running Routemark holds this lesson folder; it was asked to show itself. */
  | { readonly code: 'lesson-open-elsewhere'; readonly lesson: LessonId }
  /** The lesson's clips were not read yet, so there is nothing to hand in. */
  | { readonly code: 'clips-unread' }
  | { readonly code: 'clip-unknown'; readonly clip: string }
  | { readonly code: 'pupil-unknown'; readonly pupil: string }
  /** Clips are being read or watched, which leaves files: a list of what would be deleted would not hold. */
  | { readonly code: 'lesson-busy' }
  /** What would be deleted is no longer what was listed; look at it again. */
  | { readonly code: 'holdings-changed' }
  /** Something that the decision names is not in the plan, the roster or among the clips; nothing was recorded. */
  | { readonly code: 'decision-meaningless'; readonly path: string }
  /** The plan on disk is not the one that the edit began with. */
  | { readonly code: 'plan-changed-elsewhere' }
  /** The roster, or the class list, would no longer be what was previewed; look at it again. */
  | { readonly code: 'roster-changed' }
  /** The sheet would no longer be what was previewed; look at it again. */
  | { readonly code: 'sheet-changed' }
  /** A file name that no system would take; see `path`. */
  | { readonly code: 'file-name-bad'; readonly path: string }
  /** A file of that name is there already, and is not replaced unasked. */
  | { readonly code: 'file-exists'; readonly path: string }
  /** Bytes arrived that are not the file that was announced. */
  | { readonly code: 'upload-differs'; readonly path: string }
  | { readonly code: 'demo-failed'; readonly reason: string };
