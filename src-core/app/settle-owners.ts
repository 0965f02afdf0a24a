import { findPinnieSquads, type PinnieSquad } from '../evidence/pinnie-squad.ts';
import { findFilmingSquad, findStrayClips, nameRecorder, type TabletTrace } from '../intake/other-squad.ts';
import type { Plan, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Decisions } from '../marking/decisions.ts';
import { type Flag, getFlagKey } from '../matching/flag.ts';
import type { ClipId } from '../matching/observation.ts';
import { type ClipReading, findSeriesNumber, getHolders } from './clip-reading.ts';

/** Whose each clip is, as far as that can be told, and where the teacher has to say so. */
export interface Owners {
  /** By clip id; null: nobody's until the teacher says whose. */
  readonly squadOf: ReadonlyMap<ClipId, SquadCode | null>;
  /** Clips that count for nobody until the teacher has looked. */
  readonly waiting: ReadonlySet<ClipId>;
  readonly flags: readonly Flag[];
}

/**
 * Gives every clip to the squad the teacher named, else to the one in whose folder it lies; where two squads
 * handed in the same clip, to the one whose tablet filmed it. A clip that another squad's tablet seems to have
 * filmed stays where it is and waits, with a flag that says whose it looks like.
 */
export function settleOwners(clips: readonly ClipReading[], plan: Plan, decisions: Decisions): Owners {
  const routes = new Map(plan.squads.map((squad) => [squad.code, squad.route]));
  // A squad that the plan no longer has owns nothing: the clip goes back to its folder.
  const findNamed = (clip: ClipId): SquadCode | undefined => {
    const named = decisions.squadOf.get(clip);
    return named !== undefined && routes.has(named) ? named : undefined;
  };
  const folders = clips.map((clip) => ({ clip, holders: getHolders(clip) }));
  const pinnies = findPinnieSquads(
    folders.map(({ clip, holders }) => ({
      clip: clip.id,
      squad: findNamed(clip.id) ?? (holders.length === 1 ? (holders[0] ?? null) : null),
      colours: clip.evidence.look?.movingColours ?? [],
    })),
    plan.squads,
  );
  const traces = folders.flatMap(({ clip, holders }) => {
    const squad = findNamed(clip.id) ?? (holders.length === 1 ? holders[0] : undefined);
    return squad === undefined ? [] : [buildTrace(clip, squad, { decisions, pinnies })];
  });
  const squadOf = new Map<ClipId, SquadCode | null>(traces.map(({ clip, squad }) => [clip, squad]));
  const flags: Flag[] = [];
  for (const { clip, holders } of folders) {
    if (squadOf.has(clip.id)) continue;
    const owner = findFilmingSquad(buildTrace(clip, '', { decisions, pinnies }), holders, { traces, routes });
    squadOf.set(clip.id, owner);
    flags.push(buildTwiceFlag(clip.id, holders, owner));
  }
  const strays = findStrayClips(traces, routes).filter(({ clip }) => findNamed(clip) === undefined);
  const strayFlags = strays.map(
    ({ clip, likely, hints }): Flag => ({
      code: 'other-squad',
      squad: squadOf.get(clip) ?? '',
      clip,
      likely,
      hints,
    }),
  );
  const waiting = strayFlags.filter((flag) => decisions.flags.get(getFlagKey(flag))?.settled !== 'cleared');
  return {
    squadOf,
    waiting: new Set(waiting.flatMap(({ clip }) => clip ?? [])),
    flags: [...flags, ...strayFlags],
  };
}

/** One flag a clip, on the desk of the squad that has it but did not film it; of the first one where unknown. */
function buildTwiceFlag(clip: ClipId, holders: readonly SquadCode[], owner: SquadCode | null): Flag {
  const squad = holders.find((holder) => holder !== owner) ?? '';
  return { code: 'handed-in-twice', squad, clip, alsoIn: holders.filter((holder) => holder !== squad) };
}

interface Known {
  readonly decisions: Decisions;
  readonly pinnies: ReadonlyMap<ClipId, PinnieSquad>;
}

function buildTrace(clip: ClipReading, squad: SquadCode, { decisions, pinnies }: Known): TabletTrace {
  const { make, model, software, brand } = clip.facts?.recorder ?? {
    make: '',
    model: '',
    software: '',
    brand: '',
  };
  return {
    clip: clip.id,
    squad,
    recorder:
      make + model === '' ? '' : [make, model, software, brand].filter((word) => word !== '').join(' '),
    recorderName: nameRecorder(make, model),
    number: findSeriesNumber(clip, squad),
    startMs: clip.stamp.startMs,
    durationSeconds: clip.facts?.durationSeconds ?? null,
    uncertaintySeconds: clip.stamp.uncertaintySeconds,
    station: getKnownStation(clip, decisions),
    pinnieOf: pinnies.get(clip.id)?.squad ?? null,
  };
}

/** The station the teacher named or a card showed, or null. */
export function getKnownStation(clip: ClipReading, decisions: Decisions): StationCode | null {
  return decisions.stationOf.get(clip.id) ?? clip.card?.station?.code ?? null;
}
