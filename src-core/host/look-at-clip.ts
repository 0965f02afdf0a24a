import type { CardReading } from '../evidence/card-vote.ts';
import { isCardSettled, mergeReadings } from '../evidence/card-vote.ts';
import type { ClipLook } from '../evidence/clip-look.ts';
import type { ColourFrame } from '../evidence/colour-frame.ts';
import { type EvidenceProblem, isLasting } from '../evidence/evidence-problem.ts';
import type { LumaFrame } from '../evidence/luma-frame.ts';
import { buildMedianFrame } from '../evidence/median-frame.ts';
import { listMovingColours } from '../evidence/moving-colours.ts';
import { describePlace } from '../evidence/place-look.ts';
import type { Seconds } from '../platform/units.ts';
import {
  cardsAnalyser,
  factsAnalyser,
  type KeptCards,
  type KeptStills,
  lookAnalyser,
  stillsAnalyser,
} from './analysers.ts';
import { findCodes } from './card-reader.ts';
import type { ClipFacts } from './clip-facts.ts';
import { type DecodedPacket, type DecodeLimits, decodeClip, probeClip } from './decode-clip.ts';
import type { Analyser, EvidenceCache } from './evidence-cache.ts';
import { readCards } from './read-cards.ts';

/** A clip as the analysers know it. */
export interface ClipPlace {
  /** Absolute path. */
  readonly path: string;
  /** Names the clip's content in the cache. */
  readonly contentId: string;
  /** The length its container states, where it states one; spares a question to ffmpeg. */
  readonly durationSeconds?: Seconds | null;
}

/** What a first look at a clip gives. */
export interface FirstLook {
  readonly look: ClipLook;
  readonly readings: readonly CardReading[];
  readonly problems: readonly EvidenceProblem[];
  /** Processor time of ffmpeg; 0 where the answer came from the cache. */
  readonly ffmpegCpuSeconds: Seconds;
}

const NOTHING_SEEN: ClipLook = {
  durationSeconds: null,
  place: null,
  movingColours: [],
  from: 'key-pictures',
};

const NOTHING_LOOKED_AT = {
  look: NOTHING_SEEN,
  readings: [],
  ffmpegCpuSeconds: 0,
  stills: { stills: [] },
  facts: null,
};

/** How well a clip is looked at. */
export interface LookOptions extends DecodeLimits {
  /** True: where the key pictures do not settle the station, head and tail are searched picture by picture. */
  readonly searchCards?: boolean;
}

/** What the cache knows of a clip's look and card; null where a part is missing or not searched as well as asked. */
export async function recallLook(
  cache: EvidenceCache,
  contentId: string,
  searchCards: boolean,
): Promise<FirstLook | null> {
  const look = await cache.read(contentId, lookAnalyser);
  const cards = await cache.read(contentId, cardsAnalyser);
  if (!look || !cards || (searchCards && !isSearched(cards))) return null;
  return { look, readings: cards.readings, problems: cards.problems, ffmpegCpuSeconds: 0 };
}

/** Whether a further search would find no more: a clip that cannot be decoded gives nothing, however it is searched. */
export function isSearched({ how, readings, problems }: KeptCards): boolean {
  return how === 'searched' || isCardSettled(readings) || problems.length > 0;
}

/**
 * A first look at a clip: a few key pictures for its place, its pinnies and its card. Answers from the cache where
 * it can.
 */
export async function lookAtClip(
  cache: EvidenceCache,
  clip: ClipPlace,
  options: LookOptions = {},
): Promise<FirstLook> {
  const first = (await recallLook(cache, clip.contentId, false)) ?? (await lookAnew(cache, clip, options));
  if (!options.searchCards || options.signal?.aborted) return first;
  const known = await recallLook(cache, clip.contentId, true);
  if (known || isSearched({ how: 'key-pictures', ...first })) return known ?? first;
  const { readings, problems } = await readCards(clip.path, options);
  const kept: KeptCards = { readings: mergeReadings(first.readings, readings), problems, how: 'searched' };
  if (problems.every(isLasting) && !options.signal?.aborted) {
    await cache.write(clip.contentId, cardsAnalyser, kept);
  }
  return { ...first, readings: kept.readings, problems };
}

async function lookAnew(cache: EvidenceCache, clip: ClipPlace, limits: DecodeLimits): Promise<FirstLook> {
  const { look, readings, problems, stills, facts, ffmpegCpuSeconds } = await takeLook(clip, limits);
  const isKept = problems.every(isLasting) && !limits.signal?.aborted;
  // A watch beside this look may have left better by now.
  const keep = async <Value>(analyser: Analyser<Value>, value: Value): Promise<Value> => {
    const known = await cache.read(clip.contentId, analyser);
    if (!known && isKept) await cache.write(clip.contentId, analyser, value);
    return known ?? value;
  };
  const cards = await keep<KeptCards>(cardsAnalyser, { readings, problems, how: 'key-pictures' });
  if (facts) await keep(factsAnalyser, facts);
  // Whoever opens the clip before it is watched sees these.
  await keep(stillsAnalyser, stills);
  return {
    look: await keep(lookAnalyser, look),
    readings: cards.readings,
    problems: cards.problems,
    ffmpegCpuSeconds,
  };
}

async function takeLook(
  clip: ClipPlace,
  limits: DecodeLimits,
): Promise<FirstLook & { readonly stills: KeptStills; readonly facts: ClipFacts | null }> {
  const probed = clip.durationSeconds == null ? await probeClip(clip.path, limits) : null;
  if (probed?.problem) return { ...NOTHING_LOOKED_AT, problems: [probed.problem] };
  const durationSeconds = probed?.facts.durationSeconds ?? clip.durationSeconds ?? null;
  const run = decodeClip(clip.path, { pass: 'quick', durationSeconds, ...limits });
  const frames: ColourFrame[] = [];
  const cards: DecodedPacket[] = [];
  const stills: { atSeconds: Seconds; jpeg: Uint8Array }[] = [];
  for await (const packet of run.packets) {
    if (packet.kind === 'colour') frames.push(asColourFrame(packet));
    if (packet.kind === 'card') cards.push(packet);
    if (packet.kind === 'still') stills.push({ atSeconds: packet.atSeconds, jpeg: packet.bytes });
  }
  const end = await run.ended;
  const found = await readPictures(cards);
  const problems = [...found.problems, ...(end.problem ? [end.problem] : [])];
  const facts = { ...end.facts, durationSeconds: end.facts.durationSeconds ?? durationSeconds };
  const look = { ...describeLook(frames, 'key-pictures'), durationSeconds: facts.durationSeconds };
  const { readings } = found;
  return { look, readings, problems, ffmpegCpuSeconds: end.cpuSeconds, stills: { stills }, facts };
}

/** Place and moving colours from a clip's colour pictures; the length is left open. */
export function describeLook(frames: readonly ColourFrame[], from: ClipLook['from']): ClipLook {
  const median = buildMedianFrame(frames);
  if (!median) return { ...NOTHING_SEEN, from };
  return {
    durationSeconds: null,
    place: describePlace(median),
    movingColours: listMovingColours(frames, median),
    from,
  };
}

/** A packet's bytes as a colour picture. */
export function asColourFrame({ width, height, atSeconds, bytes }: DecodedPacket): ColourFrame {
  return { width, height, atSeconds, yuv: bytes };
}

/** A packet's bytes as a brightness picture. */
export function asLumaFrame({ width, height, atSeconds, bytes }: DecodedPacket): LumaFrame {
  return { width, height, atSeconds, luma: bytes };
}

/** Pictures without a code after which a settled card counts as taken away. */
const GONE_AFTER = 1;

/** Reads picture after picture, and stops once a card is settled and gone. */
async function readPictures(
  packets: readonly DecodedPacket[],
): Promise<{ readings: CardReading[]; problems: EvidenceProblem[] }> {
  const readings: CardReading[] = [];
  let blank = 0;
  for (const packet of packets) {
    const found = await findCodes(asLumaFrame(packet));
    if (!found.ok) return { readings, problems: [found.problem] };
    readings.push(...found.readings);
    blank = found.readings.length === 0 ? blank + 1 : 0;
    if (blank >= GONE_AFTER && isCardSettled(readings)) break;
  }
  return { readings, problems: [] };
}
