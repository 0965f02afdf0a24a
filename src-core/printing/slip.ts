import type { Plan, SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import type { LessonScore, PupilScore, SquadScore } from '../marking/points.ts';
import type { SlotScore } from '../marking/squad-score.ts';
import { groupBy } from '../platform/group-by.ts';

/** One thing that went well; every one stands on what the teacher has marked. */
export type WentWell =
  /** Every criterion was met at these stations. */
  | { readonly code: 'all-met'; readonly stations: readonly StationCode[] }
  /** A criterion was met in every clip, and nothing waits to be confirmed. */
  | { readonly code: 'always-met'; readonly criterion: string }
  /** A criterion was met in all that is confirmed so far, or in the only clip: at these stations, and no more is known. */
  | { readonly code: 'met-at'; readonly criterion: string; readonly stations: readonly StationCode[] }
  | { readonly code: 'order-kept' }
  /** Full points for a criterion of squads. */
  | { readonly code: 'squad-full'; readonly criterion: string }
  /** Said where nothing else can be: a clip was filmed. */
  | { readonly code: 'took-part' };

/** One thing to do next. */
export type DoNext =
  | { readonly code: 'not-met'; readonly criterion: string; readonly stations: readonly StationCode[] }
  | { readonly code: 'no-clip'; readonly stations: readonly StationCode[] }
  | { readonly code: 'out-of-order'; readonly stations: readonly StationCode[] }
  | { readonly code: 'squad-more'; readonly criterion: string };

/** What a squad or a pupil takes home: about their own work alone, without points, ranks or anybody else. */
export interface Slip {
  readonly squad: SquadCode;
  /** Null on a squad's slip. */
  readonly pupil: Pupil | null;
  /** Absent and excused pupils get a slip without a word about the work. */
  readonly presence: 'there' | 'absent' | 'excused';
  /** At most three. */
  readonly well: readonly WentWell[];
  /** At most two. */
  readonly next: readonly DoNext[];
  /** Steps whose clips the teacher has confirmed; all that is said of clips stands on these. */
  readonly confirmed: number;
  /** Steps that are left out because nobody has confirmed them yet. */
  readonly waiting: number;
}

/** More than this is read by nobody of ten; our own choice. */
const MOST_WELL = 3;
const MOST_NEXT = 2;

type Told = Pick<Slip, 'well' | 'next' | 'confirmed' | 'waiting'>;

const NOTHING: Told = { well: [], next: [], confirmed: 0, waiting: 0 };

/** What slips are made from. */
export interface SlipInput {
  readonly plan: Plan;
  readonly score: LessonScore;
  /** Slots without a clip that the teacher let pass, by squad. */
  readonly allowedGaps: ReadonlyMap<SquadCode, ReadonlySet<SlotIndex>>;
}

/** A slip for each squad, in the plan's order. */
export function buildSquadSlips(input: SlipInput): readonly Slip[] {
  return input.score.squads.map((squad) => ({
    squad: squad.squad,
    pupil: null,
    presence: 'there',
    ...tell(input, squad, squad.slots),
  }));
}

/** A slip for each pupil, in the roster's order: of what the squad did while the pupil was there. */
export function buildPupilSlips(input: SlipInput): readonly Slip[] {
  return input.score.pupils.map((score) => buildPupilSlip(input, score));
}

function buildPupilSlip(input: SlipInput, { pupil, state, slots }: PupilScore): Slip {
  const squad = input.score.squads.find((one) => one.squad === pupil.squad);
  const own = { squad: pupil.squad, pupil };
  if (state === 'absent' || state === 'excused' || !squad) {
    return { ...own, presence: state === 'excused' ? 'excused' : 'absent', ...NOTHING };
  }
  const there = squad.slots.filter(({ slot }) => slots.includes(slot));
  return { ...own, presence: 'there', ...tell(input, squad, there) };
}

function tell(input: SlipInput, squad: SquadScore, slots: readonly SlotScore[]): Told {
  const gaps = findGaps(input, squad, slots);
  const inked = slots.filter(({ state }) => state === 'inked');
  const waiting = slots.length - inked.length - gaps.missing.length - gaps.allowed;
  const known = { isEveryClip: waiting === 0, isWalked: waiting === 0 && gaps.missing.length === 0 };
  return {
    well: tellWell(squad, inked, known).slice(0, MOST_WELL),
    next: tellNext(input.plan, squad, { inked, missing: gaps.missing }).slice(0, MOST_NEXT),
    confirmed: inked.length,
    waiting,
  };
}

/** Slots without a clip: those that the teacher has kept as missing, and how many were let pass. */
function findGaps(
  { allowedGaps }: SlipInput,
  squad: SquadScore,
  slots: readonly SlotScore[],
): { readonly missing: readonly SlotScore[]; readonly allowed: number } {
  const empty = slots.filter(({ state }) => state === 'no-clip');
  const allowed = empty.filter(({ slot }) => allowedGaps.get(squad.squad)?.has(slot));
  const isOpen = ({ slot }: SlotScore) =>
    squad.openFlags.some((flag) => flag.clip === null && flag.slot === slot);
  const missing = empty.filter((slot) => !allowed.includes(slot) && !isOpen(slot));
  return { missing, allowed: allowed.length };
}

function tellWell(
  squad: SquadScore,
  inked: readonly SlotScore[],
  { isEveryClip, isWalked }: { readonly isEveryClip: boolean; readonly isWalked: boolean },
): readonly WentWell[] {
  const full = inked.filter(({ clip }) => clip?.criteria.every(({ decided }) => decided === true));
  const codes = inked[0]?.clip?.criteria.map(({ criterion }) => criterion) ?? [];
  const isAllFull = full.length === inked.length;
  const always = isAllFull ? [] : codes.filter((code) => inked.every((slot) => isMet(slot, code)));
  const isEachTime = isEveryClip && inked.length > 1;
  const stations = inked.map(({ station }) => station);
  const said: WentWell[] = [
    ...(full.length > 0 ? [{ code: 'all-met' as const, stations: full.map(({ station }) => station) }] : []),
    ...always.map((criterion) =>
      isEachTime
        ? { code: 'always-met' as const, criterion }
        : { code: 'met-at' as const, criterion, stations },
    ),
    ...(isWalked && inked.length > 1 && inked.every(({ order }) => !order.broken)
      ? [{ code: 'order-kept' as const }]
      : []),
    ...squad.criteria
      .filter(({ decided, max }) => decided !== null && decided === max && max > 0)
      .map(({ criterion }) => ({ code: 'squad-full' as const, criterion })),
  ];
  return said.length === 0 && inked.length > 0 ? [{ code: 'took-part' }] : said;
}

function isMet({ clip }: SlotScore, code: string): boolean {
  return clip?.criteria.find(({ criterion }) => criterion === code)?.decided === true;
}

/** What came up most often first; among as many, in the order of gaps, criteria, order, squad criteria. */
function tellNext(
  plan: Plan,
  squad: SquadScore,
  { inked, missing }: { readonly inked: readonly SlotScore[]; readonly missing: readonly SlotScore[] },
): readonly DoNext[] {
  const broken = inked.filter(({ order }) => order.broken).map(({ station }) => station);
  const unmet = groupBy(
    inked.flatMap(({ station, clip }) =>
      (clip?.criteria ?? [])
        .filter(({ decided }) => decided === false)
        .map(({ criterion }) => ({ criterion, station })),
    ),
    ({ criterion }) => criterion,
  );
  const told = [
    { code: 'no-clip' as const, stations: missing.map(({ station }) => station) },
    ...plan.rubric.clip.map(({ code: criterion }) => ({
      code: 'not-met' as const,
      criterion,
      stations: (unmet.get(criterion) ?? []).map(({ station }) => station),
    })),
    { code: 'out-of-order' as const, stations: broken },
  ]
    .filter(({ stations }) => stations.length > 0)
    .sort((one, other) => other.stations.length - one.stations.length);
  const more = squad.criteria
    .filter(({ decided, max }) => decided !== null && decided < max)
    .map(({ criterion }) => ({ code: 'squad-more' as const, criterion }));
  return [...told, ...more];
}
