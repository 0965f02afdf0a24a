import type { CardVerdict } from '../evidence/card-vote.ts';
import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { SeriesNumber } from '../intake/clip-order.ts';
import { type DcfNumber, findDcfNumber } from '../intake/dcf-number.ts';
import type { FoundFile } from '../intake/found-file.ts';
import type { Stamp } from '../intake/stamp.ts';
import type { SquadCode } from '../lesson/plan.ts';
import type { ClipId } from '../matching/observation.ts';
import type { MediaFacts } from '../media/media-facts.ts';
import type { MediaProblem } from '../media/media-problem.ts';
import type { ClipEvidence } from './clip-evidence.ts';

/** One file as found in one squad's folder. */
export interface HeldFile {
  readonly file: FoundFile;
  readonly squad: SquadCode;
}

/** One recording, however many copies of it were handed in, with all that was read from it. */
export interface ClipReading {
  readonly id: ClipId;
  /** Every copy, in natural order of path; never empty. */
  readonly copies: readonly HeldFile[];
  /** Null where nothing usable was read. */
  readonly facts: MediaFacts | null;
  readonly mediaProblems: readonly MediaProblem[];
  readonly stamp: Stamp;
  /** Null where no codes were looked for (unreadable, or far from the lesson's day). */
  readonly card: CardVerdict | null;
  /** What went wrong while its pictures were looked at. */
  readonly lookProblems: readonly EvidenceProblem[];
  /** What its pictures gave beside the card. */
  readonly evidence: ClipEvidence;
}

/** The squads in whose folders a clip lies, each once. */
export function getHolders(clip: ClipReading): readonly SquadCode[] {
  return [...new Set(clip.copies.map(({ squad }) => squad))];
}

/** The path of the copy in this squad's folder, or of the first copy. */
export function getPath(clip: ClipReading, squad: SquadCode | null): string {
  const copy = clip.copies.find((held) => held.squad === squad) ?? clip.copies[0];
  return copy?.file.path ?? '';
}

/** The camera's number in a clip's file name, or null. */
export function findCameraNumber(clip: ClipReading, squad: SquadCode | null): DcfNumber | null {
  const [name = '', folder = null] = getPath(clip, squad).split('/').reverse();
  return findDcfNumber(name, folder);
}

/** The number as a series that orders clips. */
export function findSeriesNumber(clip: ClipReading, squad: SquadCode | null): SeriesNumber | null {
  const number = findCameraNumber(clip, squad);
  return number && { series: number.series, value: number.value };
}
