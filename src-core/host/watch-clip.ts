import { availableParallelism } from 'node:os';
import { type CardReading, mergeReadings } from '../evidence/card-vote.ts';
import type { ClipLook } from '../evidence/clip-look.ts';
import type { ColourFrame } from '../evidence/colour-frame.ts';
import { type EvidenceProblem, isLasting } from '../evidence/evidence-problem.ts';
import { createPrintReader, type MotionPrint, type PrintReader } from '../evidence/motion-print.ts';
import type { Seconds } from '../platform/units.ts';
import { createMotionReader, type MotionReader } from '../signal/motion-reader.ts';
import type { MotionSeries } from '../signal/motion-series.ts';
import { resampleMotion } from '../signal/resample-motion.ts';
import {
  cardsAnalyser,
  factsAnalyser,
  type KeptCards,
  type KeptStills,
  type KeptWatch,
  lookAnalyser,
  motionAnalyser,
  stillsAnalyser,
  watchAnalyser,
} from './analysers.ts';
import { findCodes } from './card-reader.ts';
import type { ClipFacts } from './clip-facts.ts';
import {
  type DecodedPacket,
  type DecodeEnd,
  type DecodeLimits,
  decodeClip,
  probeClip,
} from './decode-clip.ts';
import {
  choosePictures,
  getMotionRate,
  MOST_COLOURS,
  MOST_STILLS,
  MOTION_RATE_HZ,
  type PictureChoice,
} from './decode-orders.ts';
import { createEvenSeries, type EvenSeries } from './even-series.ts';
import type { EvidenceCache } from './evidence-cache.ts';
import { asColourFrame, asLumaFrame, type ClipPlace, describeLook, isSearched } from './look-at-clip.ts';

/** How a clip is watched. */
export interface WatchOptions extends DecodeLimits {
  /** Cores that ffmpeg may decode on; all unless given. */
  readonly threads?: number;
}

/** What watching a clip left in the cache, in short. */
export interface WatchedClip {
  readonly print: MotionPrint;
  readonly problems: readonly EvidenceProblem[];
  /** Processor time of ffmpeg, of runs that were given up as far as they came to tell it; 0 where the answer came from the cache. */
  readonly ffmpegCpuSeconds: Seconds;
}

/**
 * Watches a clip whole, once: its motion, its stills, its place and pinnies, and, where no search has settled it, its
 * card go into the cache. What was decoded before a clip broke off is kept with the problem.
 */
export async function watchClip(
  cache: EvidenceCache,
  clip: ClipPlace,
  options: WatchOptions = {},
): Promise<WatchedClip> {
  const known = await recallWatch(cache, clip.contentId);
  if (known) return known;
  const cards = await cache.read(clip.contentId, cardsAnalyser);
  const wantsCards = cards === null || !isSearched(cards);
  const told = await cache.read(clip.contentId, factsAnalyser);
  const { facts, problem } = told ? { facts: told, problem: null } : await probeClip(clip.path, options);
  if (problem) return { print: { seconds: [] }, problems: [problem], ffmpegCpuSeconds: 0 };
  const seen = await watch(clip, facts, { ...options, cards: wantsCards });
  if (seen.problems.every(isLasting) && !options.signal?.aborted) {
    if (wantsCards) await keepCards(cache, clip.contentId, { before: cards?.readings ?? [], seen });
    await keep(cache, clip.contentId, seen);
  }
  const { print, problems, ffmpegCpuSeconds } = seen;
  return { print, problems, ffmpegCpuSeconds };
}

/** What an earlier watching left, where all of it is still there; decodes nothing. */
export async function recallWatch(cache: EvidenceCache, contentId: string): Promise<WatchedClip | null> {
  const watched = await cache.read(contentId, watchAnalyser);
  // Written last, it vouches for the others; they are large, so that only their presence is looked at here.
  if (!watched || !areCurrent(watched.parts)) return null;
  const isThere = watched.hasMotion
    ? (await cache.has(contentId, motionAnalyser)) && (await cache.has(contentId, stillsAnalyser))
    : true;
  return isThere ? { print: watched.print, problems: watched.problems, ffmpegCpuSeconds: 0 } : null;
}

/** The versions of what watching leaves now. */
const PARTS: KeptWatch['parts'] = {
  motion: motionAnalyser.version,
  stills: stillsAnalyser.version,
  look: lookAnalyser.version,
};

function areCurrent({ motion, stills, look }: KeptWatch['parts']): boolean {
  return motion === PARTS.motion && stills === PARTS.stills && look === PARTS.look;
}

/**
 * Takes back an earlier watching's word for its motion and stills, where one of them cannot be read: the clip then counts
 * as not watched, and is watched again. Nothing is taken from a clip that never gave a picture.
 */
export async function disownWatch(cache: EvidenceCache, contentId: string): Promise<void> {
  const watched = await cache.read(contentId, watchAnalyser);
  if (watched?.hasMotion) await cache.drop(contentId, watchAnalyser);
}

interface Seen extends WatchedClip {
  readonly motion: MotionSeries | null;
  readonly stills: KeptStills;
  readonly look: ClipLook;
  readonly readings: readonly CardReading[];
}

async function keep(cache: EvidenceCache, contentId: string, seen: Seen): Promise<void> {
  const { motion, stills, look, print, problems } = seen;
  if (motion) await cache.write(contentId, motionAnalyser, motion);
  await cache.write(contentId, stillsAnalyser, stills);
  if (look.place) await cache.write(contentId, lookAnalyser, look);
  await cache.write(contentId, watchAnalyser, {
    print,
    problems,
    hasMotion: motion !== null,
    parts: PARTS,
  });
}

async function keepCards(
  cache: EvidenceCache,
  contentId: string,
  { before, seen }: { readonly before: readonly CardReading[]; readonly seen: Seen },
): Promise<void> {
  const readings = mergeReadings(before, seen.readings);
  const kept: KeptCards = { readings, problems: seen.problems, how: 'searched' };
  await cache.write(contentId, cardsAnalyser, kept);
}

interface Gathering {
  readonly cards: CardReading[];
  readonly colours: EvenSeries<ColourFrame>;
  readonly stills: EvenSeries<KeptStills['stills'][number]>;
  readonly failures: EvidenceProblem[];
  motion: MotionReader | null;
  print: PrintReader | null;
  readonly lumaSeconds: Seconds[];
}

/** Decodes with the fewest pictures first, and starts anew with more where too few remain; that shows at once. */
async function watch(
  clip: ClipPlace,
  facts: ClipFacts,
  options: WatchOptions & { readonly cards: boolean },
): Promise<Seen> {
  let pictures = choosePictures(facts);
  let before: Seconds = 0;
  for (;;) {
    const { gathered, end }: { gathered: Gathering; end: DecodeEnd } = await gather(clip, facts, {
      ...options,
      pictures,
    });
    const cpuSeconds = before + end.cpuSeconds;
    if (!end.better) return sumUp(gathered, { ...end, cpuSeconds }, pictures);
    pictures = end.better;
    before = cpuSeconds;
  }
}

async function gather(
  clip: ClipPlace,
  facts: ClipFacts,
  options: WatchOptions & { readonly cards: boolean; readonly pictures: PictureChoice },
): Promise<{ gathered: Gathering; end: DecodeEnd }> {
  const threads = options.threads ?? availableParallelism();
  const run = decodeClip(clip.path, { ...options, pass: 'full', facts, threads });
  const gathered: Gathering = {
    cards: [],
    colours: createEvenSeries(MOST_COLOURS),
    stills: createEvenSeries(MOST_STILLS),
    failures: [],
    motion: null,
    print: null,
    lumaSeconds: [],
  };
  const rateHz = getMotionRate(facts);
  for await (const packet of run.packets) await takePacket(gathered, packet, rateHz);
  return { gathered, end: await run.ended };
}

async function takePacket(gathered: Gathering, packet: DecodedPacket, rateHz: number): Promise<void> {
  const { atSeconds, bytes } = packet;
  if (packet.kind === 'luma') takeLuma(gathered, packet, rateHz);
  else if (packet.kind === 'still') gathered.stills.push({ atSeconds, jpeg: bytes });
  else if (packet.kind === 'colour') gathered.colours.push(asColourFrame(packet));
  else if (gathered.failures.length === 0) {
    const found = await findCodes(asLumaFrame(packet));
    if (found.ok) gathered.cards.push(...found.readings);
    else gathered.failures.push(found.problem);
  }
}

function takeLuma(
  gathered: Gathering,
  { width, height, atSeconds, bytes }: DecodedPacket,
  rateHz: number,
): void {
  gathered.motion ??= createMotionReader({ width, height, rateHz, fromSeconds: atSeconds });
  gathered.print ??= createPrintReader(width, height);
  gathered.motion.push(bytes);
  const times = gathered.lumaSeconds;
  const second = (at: Seconds) => Math.floor(at - (times[0] ?? at) + 0.01);
  if (times.length === 0 || second(atSeconds) > second(times.at(-1) ?? 0)) gathered.print.push(bytes);
  times.push(atSeconds);
}

function sumUp(gathered: Gathering, end: DecodeEnd, pictures: PictureChoice): Seen {
  const { cards, colours, stills, failures, motion, print, lumaSeconds } = gathered;
  const read = motion?.finish() ?? null;
  return {
    motion: read && pictures === 'uneven' ? resampleMotion(read, lumaSeconds, MOTION_RATE_HZ) : read,
    print: print?.finish() ?? { seconds: [] },
    stills: { stills: stills.kept },
    look: { ...describeLook(colours.kept, 'whole-clip'), durationSeconds: end.facts.durationSeconds },
    readings: cards,
    problems: [...failures, ...(end.problem ? [end.problem] : [])],
    ffmpegCpuSeconds: end.cpuSeconds,
  };
}
