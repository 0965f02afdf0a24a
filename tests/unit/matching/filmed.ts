import { matchSquad, type SquadMatch } from '../../../src-core/matching/match-squad.ts';
import type { PlacedClip } from '../../../src-core/matching/observation.ts';
import type { SquadClips } from '../../../src-core/matching/walk.ts';

/** One clip in words: `C` a station card, `?` unknown, each with minutes from the start of the period or none. */
type Filmed = string | readonly [station: string, minute: number];

/** A PlacedClip whose id is its position and station, such as `2C` or `3?`. */
export function placed(what: string, position: number, over: Partial<PlacedClip> = {}): PlacedClip {
  return {
    clip: `${position}${what}`,
    startMs: null,
    uncertaintySeconds: 2,
    hasOrder: true,
    slotByTeacher: null,
    observation: what === '?' ? { known: false, scores: {} } : { known: true, station: what, from: 'card' },
    ...over,
  };
}

export function filmed(...clips: readonly Filmed[]): PlacedClip[] {
  return clips.map((clip, position) =>
    typeof clip === 'string'
      ? placed(clip, position)
      : placed(clip[0], position, { startMs: clip[1] * 60_000 }),
  );
}

/** Every clip five minutes after the one before. */
export function everyFiveMinutes(stations: string): PlacedClip[] {
  return [...stations].map((what, position) => placed(what, position, { startMs: position * 300_000 }));
}

export function match(
  route: string,
  clips: readonly PlacedClip[],
  retake: SquadClips['retake'] = 'last',
): SquadMatch {
  return matchSquad({ squad: 'plum', route: [...route], clips, retake });
}

/** Each clip's role and slot in a few letters: `counts 2`, `extra`, … */
export function roles(result: SquadMatch): string[] {
  return result.assignments.map(({ role, slot }) => (slot === null ? role : `${role} ${slot}`));
}

/** Each flag as its code and what it is about: `missing 3`, `retake 2C`. */
export function flags(result: SquadMatch): string[] {
  return result.flags.map((flag) => `${flag.code} ${flag.code === 'missing' ? flag.slot : flag.clip}`);
}
