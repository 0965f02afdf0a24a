import type { CardSearchProblem } from '../evidence/card-search-problem.ts';
import { type CardReading, isCardSettled, mergeReadings } from '../evidence/card-vote.ts';
import type { Seconds } from '../platform/units.ts';
import { findCodes } from './card-reader.ts';
import { type FrameRequest, type FrameRunEnd, type FrameWindow, sampleFrames } from './sample-frames.ts';

/** The codes read in one clip, and what went wrong while looking. */
export interface ClipCards {
  readonly readings: readonly CardReading[];
  readonly problems: readonly CardSearchProblem[];
  /** Pictures that were looked at. */
  readonly frameCount: number;
}

/** How a search for cards may be limited. */
export interface CardSearchOptions {
  readonly signal?: AbortSignal;
  /** For each of the two looks that a search may take. */
  readonly limitSeconds?: Seconds;
}

/** Cards are held up first of all: a card and a clock shown one after the other fit in here. */
const HEAD: FrameWindow = { fromSeconds: 0, lengthSeconds: 3.5, take: { perSecond: 5 } };

const TAIL_SECONDS = 1;

/** Single pictures between head and tail, in equal steps. */
const BETWEEN = 4;

/** Pictures in a row without a code after which a card counts as taken away. */
const GONE_AFTER = 3;

/**
 * Looks for codes in the head of a clip or in a still. Where these do not settle the station, a second look takes
 * the clip's tail and a few pictures between. What was read stays valid whatever went wrong.
 */
export async function readCards(path: string, options: CardSearchOptions = {}): Promise<ClipCards> {
  const head = await look(path, { windows: [HEAD], ...options });
  const rest = listRest(head.end.durationSeconds);
  const isOver = isCardSettled(head.readings) || head.isBroken || rest.length === 0;
  if (isOver) return { readings: head.readings, problems: head.problems, frameCount: head.end.frameCount };
  const second = await look(path, { windows: rest, ...options });
  const problems = second.problems.map((problem) => describeSecond(problem, head.lastSeconds));
  return {
    readings: mergeReadings(head.readings, second.readings),
    // Both looks find a clip cut short that is; once is enough.
    problems: head.problems.length > 0 ? head.problems : problems,
    frameCount: head.end.frameCount + second.end.frameCount,
  };
}

interface Look {
  readonly readings: readonly CardReading[];
  readonly problems: readonly CardSearchProblem[];
  readonly end: FrameRunEnd;
  readonly lastSeconds: Seconds;
  /** A further look would fail in the same way. */
  readonly isBroken: boolean;
}

async function look(path: string, request: FrameRequest): Promise<Look> {
  const run = sampleFrames(path, request);
  const readings: CardReading[] = [];
  const failures: CardSearchProblem[] = [];
  let lastSeconds = 0;
  let blank = 0;
  for await (const frame of run.frames) {
    lastSeconds = frame.atSeconds;
    const found = await findCodes(frame);
    if (!found.ok) {
      failures.push(found.problem);
      break;
    }
    readings.push(...found.readings);
    blank = found.readings.length === 0 ? blank + 1 : 0;
    if (blank >= GONE_AFTER && isCardSettled(readings)) break;
  }
  const end = await run.ended;
  const problems = end.problem ? [...failures, end.problem] : failures;
  const isBroken = failures.length > 0 || !['done', 'stopped'].includes(end.reason);
  return { readings, problems, end, lastSeconds, isBroken };
}

/** Single pictures between head and tail, and the tail; none for stills and for clips that the head covers. */
function listRest(durationSeconds: Seconds | null): FrameWindow[] {
  const between = (durationSeconds ?? 0) - HEAD.lengthSeconds - TAIL_SECONDS;
  if (durationSeconds === null || between <= -TAIL_SECONDS) return [];
  const tailFrom = Math.max(HEAD.lengthSeconds, durationSeconds - TAIL_SECONDS);
  const tail: FrameWindow = { fromSeconds: tailFrom, lengthSeconds: TAIL_SECONDS, take: HEAD.take };
  if (between < BETWEEN) return [tail];
  const singles = Array.from({ length: BETWEEN }, (_, at): FrameWindow => {
    const fromSeconds = HEAD.lengthSeconds + (between * (at + 1)) / (BETWEEN + 1);
    return { fromSeconds, lengthSeconds: TAIL_SECONDS, take: 'key-picture' };
  });
  return [...singles, tail];
}

/** The head was there, so a rest that is not means that the file ends before its time. */
function describeSecond(problem: CardSearchProblem, lastSeconds: Seconds): CardSearchProblem {
  if (problem.code !== 'decode-failed') return problem;
  return { code: 'decode-cut-short', lastSeconds, detail: problem.detail };
}
