import {
  findLookAlike,
  type LabelledLook,
  type LookAlike,
  type PlaceMemory,
  rememberPlaces,
} from '../evidence/find-look-alike.ts';
import type { PlaceLook } from '../evidence/place-look.ts';
import { scoreRepFit } from '../evidence/rep-fit.ts';
import type { Plan, StationCode } from '../lesson/plan.ts';
import type { Decisions } from '../marking/decisions.ts';
import type { ClipId, Observation } from '../matching/observation.ts';
import { findMovement, getMovementOptions } from './clip-evidence.ts';
import type { ClipReading } from './clip-reading.ts';
import { getKnownStation } from './settle-owners.ts';

/** Where a clip was filmed, as far as its evidence tells. */
export interface ObservedClip {
  readonly observation: Observation;
  /** The labelled clip whose place it resembles; null where its station is known or nothing is alike enough. */
  readonly lookAlike: LookAlike | null;
}

/**
 * Clips that one station is remembered by, more of which teach little; and all stations together, for each clip is
 * compared with each.
 */
const MOST = { perStation: 6, inAll: 72 } as const;

/** What is known of each clip's station, and of the rest what looks, tempo and count say. */
export function observeClips(
  clips: readonly ClipReading[],
  plan: Plan,
  decisions: Decisions,
): ReadonlyMap<ClipId, ObservedClip> {
  const isUnknown = (clip: ClipReading) => getKnownStation(clip, decisions) === null;
  // Without a clip to be placed, nothing need be remembered.
  const memory = clips.some(isUnknown) ? recallMemory(listLabelled(clips, plan, decisions)) : null;
  return new Map(clips.map((clip) => [clip.id, observe(clip, { plan, decisions, memory })]));
}

function listLabelled(
  clips: readonly ClipReading[],
  { stations }: Plan,
  decisions: Decisions,
): readonly LabelledLook[] {
  const most = Math.max(1, Math.min(MOST.perStation, Math.floor(MOST.inAll / stations.length)));
  const perStation = new Map<StationCode, number>();
  return clips.flatMap((clip): LabelledLook[] => {
    const station = getKnownStation(clip, decisions);
    const look = clip.evidence.look?.place;
    if (station === null || !look) return [];
    const before = perStation.get(station) ?? 0;
    perStation.set(station, before + 1);
    return before < most ? [{ clip: clip.id, station, look }] : [];
  });
}

interface Knowledge {
  readonly plan: Plan;
  readonly decisions: Decisions;
  readonly memory: Remembered | null;
}

interface Remembered {
  readonly memory: PlaceMemory;
  /** Look-alikes that were searched for with this memory. */
  readonly alikes: Map<PlaceLook, LookAlike | null>;
}

// Every decision grades the lesson anew and hardly any names a place: what the last labelled looks have taught is kept,
// for to learn it each is compared with each.
let latest: Remembered | null = null;

function recallMemory(labelled: readonly LabelledLook[]): Remembered {
  const before = latest?.memory.labelled;
  const isSame = labelled.every((one, at) => {
    const other = before?.[at];
    return other?.clip === one.clip && other.station === one.station && other.look === one.look;
  });
  if (latest && isSame && before?.length === labelled.length) return latest;
  latest = { memory: rememberPlaces(labelled), alikes: new Map() };
  return latest;
}

function findAlike(place: PlaceLook, { memory, alikes }: Remembered): LookAlike | null {
  const known = alikes.get(place);
  if (known !== undefined) return known;
  const found = findLookAlike(place, memory);
  alikes.set(place, found);
  return found;
}

function observe(clip: ClipReading, { plan, decisions, memory }: Knowledge): ObservedClip {
  const station = getKnownStation(clip, decisions);
  if (station !== null) {
    const from = decisions.stationOf.has(clip.id) ? 'teacher' : 'card';
    return { observation: { known: true, station, from }, lookAlike: null };
  }
  const place = clip.evidence.look?.place;
  const lookAlike = place && memory ? findAlike(place, memory) : null;
  const free = findMovement(clip.evidence, getMovementOptions(plan, null));
  const repFit = free ? scoreRepFit(free.reps, plan.stations) : {};
  return { observation: { known: false, scores: addUp([lookAlike?.scores ?? {}, repFit]) }, lookAlike };
}

/** Independent scores for a station, multiplied as odds. */
function addUp(
  kinds: readonly Readonly<Record<StationCode, number>>[],
): Readonly<Record<StationCode, number>> {
  const odds = new Map<StationCode, number>();
  for (const [station, score] of kinds.flatMap((scores) => Object.entries(scores))) {
    odds.set(station, ((odds.get(station) ?? 1) * score) / (1 - score));
  }
  return Object.fromEntries([...odds].map(([station, value]) => [station, value / (1 + value)]));
}
