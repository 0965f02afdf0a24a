import type { StationCode } from '../lesson/plan.ts';
import { compareLooks } from './compare-looks.ts';
import type { PlaceLook } from './place-look.ts';

/** A clip whose station is known, with how its place looks. */
export interface LabelledLook {
  readonly clip: string;
  readonly station: StationCode;
  readonly look: PlaceLook;
}

/** Everything that the lesson's labelled clips teach about telling its places apart. */
export interface PlaceMemory {
  readonly labelled: readonly LabelledLook[];
  /**
   * How far two places that are both wrong usually lie apart at most, seen from a clip: a best one must win by more
   * than that. Null: fewer than three stations are labelled, so that nothing can be said.
   */
  readonly margin: number | null;
}

/** The station a clip's place resembles. */
export interface LookAlike {
  readonly station: StationCode;
  /** The labelled clip it resembles most. */
  readonly like: string;
  /** How unlike the two look, 0 to 1. */
  readonly apart: number;
  /** By how many margins it beats the second best station; above 1. */
  readonly lead: number;
  /** Per labelled station, 0 (against) to 1 (for), as the matcher takes them. */
  readonly scores: Readonly<Record<StationCode, number>>;
}

/** Of the chance leads of one wrong place over the next, this share lies below the margin. */
const CHANCE_SHARE = 0.95;

/** Compression alone moves likeness by so much. Measured on one film written at three qualities. */
const LEAST_MARGIN = 0.02;

const FEWEST_STATIONS = 3;

/** A lead of one margin is worth three to one; beyond it trust grows with the square, to fifty to one. */
const SURE = { atMargin: 0.75, most: 0.98 } as const;

/**
 * Learns the margin: for every labelled clip, how far the nearest of the wrong stations beats the next wrong one.
 * That is the lead that chance alone gives.
 */
export function rememberPlaces(labelled: readonly LabelledLook[]): PlaceMemory {
  const leads = labelled.flatMap((clip) => {
    const others = labelled.filter(({ station }) => station !== clip.station);
    const [nearest, next] = rankStations(clip.look, others);
    return nearest && next ? [next.apart - nearest.apart] : [];
  });
  if (leads.length < FEWEST_STATIONS) return { labelled, margin: null };
  leads.sort((one, other) => one - other);
  const chance = leads[Math.min(leads.length - 1, Math.floor(leads.length * CHANCE_SHARE))] ?? 0;
  return { labelled, margin: Math.max(LEAST_MARGIN, chance) };
}

/** The station that a clip's place resembles clearly more than any other; null where none does. */
export function findLookAlike(look: PlaceLook, { labelled, margin }: PlaceMemory): LookAlike | null {
  if (margin === null) return null;
  const ranked = rankStations(look, labelled);
  const [best, second] = ranked;
  if (!best || !second) return null;
  const lead = (second.apart - best.apart) / margin;
  if (lead <= 1) return null;
  const score = Math.min(SURE.most, 1 - (1 - SURE.atMargin) / lead ** 2);
  const scores = ranked.map(({ station }) => [station, station === best.station ? score : 1 - score]);
  return { ...best, lead, scores: Object.fromEntries(scores) };
}

interface RankedStation {
  readonly station: StationCode;
  readonly like: string;
  readonly apart: number;
}

/** Stations by their most similar clip, most similar first. */
function rankStations(look: PlaceLook, labelled: readonly LabelledLook[]): readonly RankedStation[] {
  const nearest = new Map<StationCode, RankedStation>();
  for (const { clip, station, look: other } of labelled) {
    const apart = compareLooks(look, other);
    const before = nearest.get(station);
    if (!before || apart < before.apart) nearest.set(station, { station, like: clip, apart });
  }
  return [...nearest.values()].sort((one, other) => one.apart - other.apart);
}
