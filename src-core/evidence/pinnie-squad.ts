import type { Squad, SquadCode } from '../lesson/plan.ts';
import { convertToLab, type Lab, parseHexColour } from '../platform/cielab.ts';
import type { MovingColour } from './moving-colours.ts';

/** A clip, whose it is taken to be, and the colours that move in it. */
export interface PinnieClip {
  readonly clip: string;
  /** Null: nobody's yet. */
  readonly squad: SquadCode | null;
  readonly colours: readonly MovingColour[];
}

/** The squad whose pinnies a clip shows instead of its own. */
export interface PinnieSquad {
  readonly squad: SquadCode;
  /** Share of what moves that has that squad's colour, 0 to 1, less what other squads' clips show of it. */
  readonly share: number;
}

/** Lightness counts a third: sun and shade change it and leave the hue. */
const LIGHTNESS_WEIGHT = 1 / 3;

/** A colour farther from every pinnie than this is none of theirs: skin, shorts, walls. CIELAB steps. */
const REACH = 16;

/**
 * On the filmed lesson a squad's own colour is 8 to 34 % of what moves, and any other's at most 6.5 %. So another
 * squad must show 7 % at least, and three times what the clip's own squad shows.
 */
const CLEARLY = { share: 0.07, times: 3 } as const;

/**
 * Clips in which another squad's pinnies fit clearly better than the squad's own, by clip. Told by the pinnie's
 * colour alone. What all squads' clips show of a colour (a red wall, say) is no sign of its squad.
 */
export function findPinnieSquads(
  clips: readonly PinnieClip[],
  squads: readonly Pick<Squad, 'code' | 'pinnie'>[],
): ReadonlyMap<string, PinnieSquad> {
  const pinnies = squads.map(({ code, pinnie }) => ({
    code,
    lab: convertToLab(parseHexColour(pinnie.colour)),
  }));
  const shown = clips.map((clip) => ({ ...clip, shares: shareOut(clip.colours, pinnies) }));
  const usual = new Map(
    pinnies.map(({ code }) => {
      const others = shown.filter(({ squad }) => squad !== code);
      return [code, getMedian(others.map(({ shares }) => shares.get(code) ?? 0))];
    }),
  );
  const found = shown.flatMap(({ clip, squad, shares }): [string, PinnieSquad][] => {
    const ranked = pinnies
      .map(({ code }) => ({ squad: code, share: (shares.get(code) ?? 0) - (usual.get(code) ?? 0) }))
      .sort((one, other) => other.share - one.share);
    const [best, second] = ranked;
    if (!best || best.squad === squad || best.share < CLEARLY.share) return [];
    const own = squad === null ? (second?.share ?? 0) : (shares.get(squad) ?? 0);
    return best.share >= CLEARLY.times * own ? [[clip, best]] : [];
  });
  return new Map(found);
}

interface Pinnie {
  readonly code: SquadCode;
  readonly lab: Lab;
}

/** Gives each colour to the nearest pinnie in reach. */
function shareOut(
  colours: readonly MovingColour[],
  pinnies: readonly Pinnie[],
): ReadonlyMap<SquadCode, number> {
  const shares = new Map<SquadCode, number>();
  for (const { lab, share } of colours) {
    const [nearest] = pinnies
      .map(({ code, lab: other }) => ({ code, apart: measureApart(lab, other) }))
      .sort((one, other) => one.apart - other.apart);
    if (nearest && nearest.apart < REACH) shares.set(nearest.code, (shares.get(nearest.code) ?? 0) + share);
  }
  return shares;
}

function measureApart(one: Lab, other: Lab): number {
  return Math.hypot((one[0] - other[0]) * LIGHTNESS_WEIGHT, one[1] - other[1], one[2] - other[2]);
}

function getMedian(values: readonly number[]): number {
  return values.toSorted((one, other) => one - other)[Math.floor(values.length / 2)] ?? 0;
}
