import { type CardText, parseCardText } from '../lesson/card-text.ts';
import type { Plan, StationCode } from '../lesson/plan.ts';
import type { EpochMs, Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';

/** One code read in one picture of a clip. */
export interface CardReading {
  readonly text: string;
  /** The picture's time from the start of the clip. */
  readonly atSeconds: Seconds;
}

/** The station that a clip's card names. */
export interface StationSight {
  readonly code: StationCode;
  readonly revision: number;
  readonly firstSeenSeconds: Seconds;
  /** Pictures in which the card was read. */
  readonly frames: number;
}

/** One reading of the class clock. */
export interface ClockReading {
  /** What the code says: the true time, rounded down to the whole second. */
  readonly instantMs: EpochMs;
  readonly atSeconds: Seconds;
}

/** The class clock as a clip shows it. */
export interface ClockSight {
  /** True instant of the clip's start: the median over the readings, each taken as its second's middle. */
  readonly trueStartMs: EpochMs;
  /** Half of the range that the readings span, half a second at least. */
  readonly spreadSeconds: Seconds;
  readonly readings: readonly ClockReading[];
}

/** A code that says nothing about this lesson's stations; reported and ignored. */
export interface ForeignCode {
  /** As read, its first 200 characters. */
  readonly text: string;
  /** `not-ours`: some other code. The rest are cards of ours that do not belong to this plan. */
  readonly kind: 'not-ours' | 'other-lesson' | 'other-revision' | 'unknown-station';
  readonly firstSeenSeconds: Seconds;
  readonly frames: number;
}

/** What the teacher should know of a clip's cards. */
export type CardProblem =
  /** Several stations' cards were read; `taken` has most pictures, null where the first two are level. */
  | {
      readonly code: 'cards-disagree';
      readonly taken: StationCode | null;
      readonly stations: readonly { readonly code: StationCode; readonly frames: number }[];
    }
  /** The clock's readings cannot belong to one running clock (a photo of it, say); none is used. */
  | { readonly code: 'clock-card-stands'; readonly spreadSeconds: Seconds };

/** What all codes of one clip together say. */
export interface CardVerdict {
  /** Null: no card of this lesson was read, or the cards are level. */
  readonly station: StationSight | null;
  /** Null: the class clock was not seen, or its readings contradict each other. */
  readonly clock: ClockSight | null;
  readonly foreign: readonly ForeignCode[];
  readonly problems: readonly CardProblem[];
}

/** Codes renew once a second, and screen and camera add up to a quarter more between the change and its picture. */
const SCREEN_LAG_MS = 250;

/** Longest part of a foreign code that is passed on. */
const FOREIGN_LENGTH = 200;

/** Pictures that must agree before a search may end early. */
const AGREEING_FRAMES = 2;

/**
 * What the codes read in one clip say under a plan: the station with most pictures, the class clock, and the rest.
 * Only cards of the plan's own lesson, revision and stations count.
 */
export function voteCards(
  readings: readonly CardReading[],
  plan: Pick<Plan, 'lesson' | 'stations'>,
): CardVerdict {
  const seen = groupByText(readings);
  const stations: StationSight[] = [];
  const foreign: ForeignCode[] = [];
  for (const { text, atSeconds } of seen) {
    const card = parseCardText(text);
    if (card?.kind === 'clock') continue;
    const times = { firstSeenSeconds: Math.min(...atSeconds), frames: atSeconds.length };
    const kind = findForeignKind(card, plan);
    if (card && kind === null) stations.push({ code: card.station, revision: card.revision, ...times });
    else foreign.push({ text: text.slice(0, FOREIGN_LENGTH), kind: kind ?? 'not-ours', ...times });
  }
  const station = electStation(mergeStations(stations));
  const clock = readClock(readings);
  return {
    station: station.taken,
    clock: clock.sight,
    foreign,
    problems: [...station.problems, ...clock.problems],
  };
}

/** Whether a search may end: one station's card was read often enough, and nothing else of ours was. */
export function isCardSettled(readings: readonly CardReading[]): boolean {
  const ours = groupByText(readings.filter(({ text }) => parseCardText(text) !== null));
  const [only, ...others] = ours;
  if (!only || others.length > 0) return false;
  return parseCardText(only.text)?.kind === 'station' && only.atSeconds.length >= AGREEING_FRAMES;
}

/** Readings of two searches in order of time; a picture that both took counts once. */
export function mergeReadings(
  one: readonly CardReading[],
  other: readonly CardReading[],
): readonly CardReading[] {
  const byKey = new Map(
    [...one, ...other].map((reading) => [`${reading.atSeconds.toFixed(2)} ${reading.text}`, reading]),
  );
  return [...byKey.values()].sort((a, b) => a.atSeconds - b.atSeconds);
}

interface SeenText {
  readonly text: string;
  readonly atSeconds: readonly Seconds[];
}

/** Each text with the pictures that show it; a code that is in one picture twice counts once. */
function groupByText(readings: readonly CardReading[]): SeenText[] {
  const seen = new Map<string, Set<Seconds>>();
  for (const { text, atSeconds } of readings) {
    const times = seen.get(text) ?? new Set();
    seen.set(text, times.add(atSeconds));
  }
  return [...seen].map(([text, times]) => ({ text, atSeconds: [...times] }));
}

type StationText = Extract<CardText, { kind: 'station' }>;

function findForeignKind(
  card: StationText | null,
  { lesson, stations }: Pick<Plan, 'lesson' | 'stations'>,
): ForeignCode['kind'] | null {
  if (!card) return 'not-ours';
  if (card.lesson !== lesson.code) return 'other-lesson';
  if (card.revision !== lesson.revision) return 'other-revision';
  return stations.some(({ code }) => code === card.station) ? null : 'unknown-station';
}

/** One card may be read in several spellings, with and without a web address before it. */
function mergeStations(sights: readonly StationSight[]): StationSight[] {
  const merged = new Map<StationCode, StationSight>();
  for (const sight of sights) {
    const before = merged.get(sight.code);
    merged.set(sight.code, {
      ...sight,
      firstSeenSeconds: Math.min(sight.firstSeenSeconds, before?.firstSeenSeconds ?? sight.firstSeenSeconds),
      frames: sight.frames + (before?.frames ?? 0),
    });
  }
  return [...merged.values()].sort((one, other) => other.frames - one.frames);
}

/** The most frequent first; a level first place is nobody's. */
function electStation(sights: readonly StationSight[]): {
  taken: StationSight | null;
  problems: CardProblem[];
} {
  const [first = null, second] = sights;
  if (!first || !second) return { taken: first, problems: [] };
  const taken = first.frames > second.frames ? first : null;
  const stations = sights.map(({ code, frames }) => ({ code, frames }));
  return { taken, problems: [{ code: 'cards-disagree', taken: taken?.code ?? null, stations }] };
}

function readClock(readings: readonly CardReading[]): { sight: ClockSight | null; problems: CardProblem[] } {
  const clock = readings.flatMap(({ text, atSeconds }): ClockReading[] => {
    const card = parseCardText(text);
    return card?.kind === 'clock' ? [{ instantMs: card.instantMs, atSeconds }] : [];
  });
  if (clock.length === 0) return { sight: null, problems: [] };
  // The code holds for a second; its middle is the best single guess of the true instant.
  const starts = clock.map(({ instantMs, atSeconds }) => instantMs + (1 / 2 - atSeconds) * MS_PER_SECOND);
  const rangeMs = Math.max(...starts) - Math.min(...starts);
  const spreadSeconds = Math.max(1, rangeMs / MS_PER_SECOND) / 2;
  if (rangeMs > MS_PER_SECOND + SCREEN_LAG_MS) {
    return { sight: null, problems: [{ code: 'clock-card-stands', spreadSeconds }] };
  }
  return { sight: { trueStartMs: getMedian(starts), spreadSeconds, readings: clock }, problems: [] };
}

function getMedian(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const upper = sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
  const lower = sorted[Math.floor((sorted.length - 1) / 2)] ?? upper;
  return (lower + upper) / 2;
}
