import type { SquadCode, StationCode } from '../lesson/plan.ts';
import type { EpochMs, Seconds } from '../platform/units.ts';
import { MS_PER_SECOND } from '../platform/units.ts';
import { getDcfDistance } from './dcf-number.ts';

/** What a clip tells of the tablet that filmed it. */
export interface TabletTrace {
  readonly clip: string;
  /** The squad whose folder it lies in. */
  readonly squad: SquadCode;
  /** Maker, model, software and kind of file as one text, to be compared; empty where the file does not say. */
  readonly recorder: string;
  /** Maker and model, as people call it. */
  readonly recorderName: string;
  /** The number series of its name, such as `IMG_`, and the number; null for other names. */
  readonly number: { readonly series: string; readonly value: number } | null;
  readonly startMs: EpochMs | null;
  readonly durationSeconds: Seconds | null;
  readonly uncertaintySeconds: Seconds;
  /** From a card or the teacher; null where unknown. */
  readonly station: StationCode | null;
  /** The squad whose pinnies are seen where that is clearly another than the clip's own; null where not. */
  readonly pinnieOf: SquadCode | null;
}

/** What people call a recorder: maker and model; the maker once, where the model begins with it. */
export function nameRecorder(make: string, model: string): string {
  if (model.toLowerCase().startsWith(make.toLowerCase())) return model;
  return `${make} ${model}`.trim();
}

/** One thing that speaks for another squad's tablet having filmed a clip. */
export type TraceHint =
  | { readonly kind: 'recorder'; readonly name: string }
  | { readonly kind: 'overlap'; readonly clip: string }
  | { readonly kind: 'fills-gap'; readonly station: StationCode }
  | { readonly kind: 'name-series'; readonly neighbour: string }
  | { readonly kind: 'pinnie'; readonly squad: SquadCode };

/** A clip that another squad probably filmed. */
export interface StrayClip {
  readonly clip: string;
  readonly likely: SquadCode;
  readonly hints: readonly TraceHint[];
}

/**
 * How many hints make a stray. One alone has innocent reasons: two tablets of one make, a borrowed tablet, a
 * number counter that was reset. Chosen on the filmed lesson and its variants.
 */
const HINTS_NEEDED = 2;

/** Share of a squad's clips that must come from one recorder before an odd one out means anything. */
const RECORDER_SHARE = 0.6;

/** How far apart two numbers of one tablet may lie within a lesson. */
const SERIES_REACH = 2;

/** Two clips of one tablet cannot overlap; anything less than this is rounding in the file's dates. */
const OVERLAP_SECONDS: Seconds = 2;

/**
 * Clips that lie in one squad's folder but were probably filmed by another's tablet. A clip is named only when
 * exactly one other squad collects enough hints, and more than the squad it lies with.
 */
export function findStrayClips(
  traces: readonly TabletTrace[],
  routes: ReadonlyMap<SquadCode, readonly StationCode[]>,
): readonly StrayClip[] {
  return traces.flatMap((trace): StrayClip[] => {
    const against = getHintsAgainst(trace, traces);
    const suspects = [...routes.keys()]
      .filter((squad) => squad !== trace.squad)
      .map((squad) => ({ squad, hints: [...against, ...getHintsFor(trace, squad, { traces, routes })] }))
      .filter(({ hints }) => hints.length >= HINTS_NEEDED && hints.some(({ kind }) => kind !== 'fills-gap'))
      .sort((a, b) => b.hints.length - a.hints.length);
    const [best, second] = suspects;
    if (!best || (second && second.hints.length === best.hints.length)) return [];
    const own = getHintsFor(trace, trace.squad, { traces, routes });
    const belongs = own.some(({ kind }) => kind === 'recorder' || kind === 'name-series');
    return belongs ? [] : [{ clip: trace.clip, likely: best.squad, hints: best.hints }];
  });
}

/**
 * Whose tablet filmed a clip that several squads handed in: the one squad among them with the most hints, or null
 * where none has any, or two have as many.
 */
export function findFilmingSquad(
  trace: TabletTrace,
  holders: readonly SquadCode[],
  lesson: TracedLesson,
): SquadCode | null {
  const [best, second] = holders
    .map((squad) => ({ squad, hints: getHintsFor(trace, squad, lesson).length }))
    .sort((a, b) => b.hints - a.hints);
  return best && best.hints > (second?.hints ?? 0) ? best.squad : null;
}

/** What says that this squad's own tablet cannot have filmed the clip: it was filming another at that time. */
function getHintsAgainst(trace: TabletTrace, traces: readonly TabletTrace[]): TraceHint[] {
  const clash = traces.find(
    (other) => other.clip !== trace.clip && other.squad === trace.squad && overlaps(trace, other),
  );
  return clash ? [{ kind: 'overlap', clip: clash.clip }] : [];
}

function overlaps(a: TabletTrace, b: TabletTrace): boolean {
  if (a.startMs === null || b.startMs === null) return false;
  if (a.uncertaintySeconds > OVERLAP_SECONDS || b.uncertaintySeconds > OVERLAP_SECONDS) return false;
  const end = (trace: TabletTrace) => (trace.startMs ?? 0) + (trace.durationSeconds ?? 0) * MS_PER_SECOND;
  const sharedMs = Math.min(end(a), end(b)) - Math.max(a.startMs, b.startMs);
  return sharedMs > OVERLAP_SECONDS * MS_PER_SECOND;
}

/** Everything the hints are drawn from. */
export interface TracedLesson {
  readonly traces: readonly TabletTrace[];
  readonly routes: ReadonlyMap<SquadCode, readonly StationCode[]>;
}

function getHintsFor(trace: TabletTrace, squad: SquadCode, { traces, routes }: TracedLesson): TraceHint[] {
  const theirs = traces.filter((other) => other.squad === squad && other.clip !== trace.clip);
  const hints: TraceHint[] = [];
  if (trace.recorder !== '' && getUsualRecorder(theirs) === trace.recorder) {
    hints.push({ kind: 'recorder', name: trace.recorderName });
  }
  if (trace.pinnieOf === squad) hints.push({ kind: 'pinnie', squad });
  const neighbour = findNumberNeighbour(trace, theirs);
  if (neighbour) hints.push({ kind: 'name-series', neighbour: neighbour.clip });
  const { station } = trace;
  if (
    station !== null &&
    routes.get(squad)?.includes(station) &&
    !theirs.some((t) => t.station === station)
  ) {
    hints.push({ kind: 'fills-gap', station });
  }
  return hints;
}

/** The recorder of most of a squad's clips, or null where no single one prevails. */
function getUsualRecorder(traces: readonly TabletTrace[]): string | null {
  const counts = new Map<string, number>();
  for (const { recorder } of traces) counts.set(recorder, (counts.get(recorder) ?? 0) + 1);
  const [usual] = [...counts].sort((a, b) => b[1] - a[1]);
  return usual && usual[1] >= 2 && usual[1] / traces.length >= RECORDER_SHARE ? usual[0] : null;
}

function findNumberNeighbour(trace: TabletTrace, theirs: readonly TabletTrace[]): TabletTrace | null {
  const { number } = trace;
  if (!number) return null;
  const sameNumber = theirs.some(
    (other) => other.number?.series === number.series && other.number.value === number.value,
  );
  if (sameNumber) return null;
  const getDistance = (other: TabletTrace) =>
    other.number?.series === number.series
      ? getDcfDistance(other.number.value, number.value)
      : Number.POSITIVE_INFINITY;
  const nearest = theirs.toSorted((a, b) => getDistance(a) - getDistance(b))[0];
  return nearest && getDistance(nearest) <= SERIES_REACH ? nearest : null;
}
