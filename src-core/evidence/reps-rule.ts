import type { PathRule } from '../signal/lag-path.ts';
import type { ScoreRule } from '../signal/lag-scores.ts';
import type { MatchRule } from '../signal/phase-match.ts';
import type { TrackRule } from '../signal/phase-path.ts';
import type { CountingRule } from './reps-finding.ts';

/** All numbers that decide what counts as a rep. */
export interface RepsRule {
  readonly score: ScoreRule;
  readonly path: PathRule;
  readonly match: MatchRule;
  readonly track: TrackRule;
  /** Fewer cycles than this in a clip are none: two that look alike may be chance. */
  readonly leastCycles: number;
  /** Share of the frames' energy that the cycles of a run must explain. */
  readonly leastExplained: number;
  /** How far the movement must go from turn to turn, in pixels of an 80-pixel frame; breathing and tremble do not. */
  readonly leastTravel: number;
  /** The same against its pace, in such pixels per second of a cycle: a slow sway must go further to be a movement. */
  readonly leastSpeed: number;
  /** The same as a share of the camera's own way in a cycle: what a panning camera leaves of the background is no movement. */
  readonly leastOfSwing: number;
  /**
   * How well cycles of a second and less must agree: the geometric mean of the lags' mean score (how steadily a length holds
   * up) and of the cells' agreement a cycle later (see `signal/cycle-agreement.ts`), times the square root of the cycles'
   * number: few must agree better than many.
   */
  readonly leastTrust: number;
  /** Power of a longer cycle's seconds by which that grows: what goes slowly to and fro looks alike by chance. */
  readonly slowTrust: number;
  /** What is enough, at any pace, for each octave of lengths that were looked through: among few, chance has few tries. */
  readonly leastTrustPerOctave: number;
  /** A movement that stands by less is looked past for one of another length that stands better; see `study-reps.ts`. */
  readonly firmStanding: number;
  /** What a cycle later must agree at best, as a share of what two cycles later do; else the cycle is twice as long. */
  readonly returnShare: number;
  /** How much of what runs back in place a cycle later counts against its being the other side's turn. */
  readonly turnedShare: number;
  /** Cost a frame at the ends of a run from or to rest; see `cycle-runs.ts`. */
  readonly fullCost: number;
  /**
   * Part of a cycle at either end that a start from rest, or a stop, may add without being a rep: longer where sides count,
   * for then a group stands in the middle between the two.
   */
  readonly approach: Readonly<Record<CountingRule, number>>;
  /** A cycle that the clip's end cuts off is done if it lacks no more than this share of it: hardly anything moves there. */
  readonly lastShare: number;
  /** And so many seconds: what is filmed after the last of fifteen pictures a second, and before the first. */
  readonly lastSeconds: number;
  /** What a turn costs that comes a whole cycle after the clip's begin, in mean energies of the cycle; see `lay-reps.ts`. */
  readonly lateTurnCost: number;
}

/**
 * See each part for what its numbers mean. What set them, on the filmed sweep (seed 1 and part of seed 2; seed 3 for
 * what is said of people who walk through):
 *
 * - `score`, `path`, `match`, `track`, `leastCycles`, `leastTravel`, `leastSpeed`, `leastOfSwing`, `fullCost`, `approach`:
 *   chosen together, by how all scenes came out; no measurement stands behind any one of them alone.
 * - `leastExplained`: cycles read into getting up and down, or into a stroll, explain up to 0.27, those of an exercise 0.34
 *   and more even in poor light.
 * - `leastTrust`, `slowTrust`: clips without reps trust their best guess up to 0.5 at a second and 0.7 at 4 s, nine of ten of
 *   them up to 0.3; those with reps from 0.9 on, but for one in a hundred.
 * - `leastTrustPerOctave`: clips without reps, looked through at the tempo of some exercise (an octave), trust it up to 0.26;
 *   those with reps from 0.4 on.
 * - `firmStanding`: of clips with reps one in a hundred stands by less; any value from 1.2 to 1.5 gives the same counts.
 * - `returnShare`: half a movement comes back at best with 0.53 of what the whole does, at most; whole cycles with 0.8 and
 *   more, six of a thousand with less behind people who walk through. The middle between: real footage halved at 0.66.
 * - `lastShare`, `lateTurnCost`: on 120 scenes more that are cut off at one end or both (seeds 5 and 6): cycles completed at the
 *   clip's end are seen as 0.11 too few at the most, those cut at 0.8 as 0.84 at the most.
 * - `approach` by sides: hops from the middle add 0.6 to 0.94 of a cycle at both ends together, where sides count; what starts at a
 *   side lacks up to 0.05, two in a hundred up to 0.08. By cycles it lacks up to 0.09.
 * - `turnedShare`: half a walk to and fro is mirrored at 0.5 and opposed in place at -0.4 to -0.5.
 */
export const REPS_RULE: RepsRule = {
  score: {
    floorShare: 0.2,
    longestShare: 0.45,
    windowCycles: 1.25,
    windowSeconds: 1,
    halfShare: 0.6,
    halfCost: 0.5,
    octaveCost: 0.02,
  },
  path: { floor: 0.12, moveCost: 1 },
  match: { sizeShare: 0.6, busyShare: 0.15, most: 2 },
  track: { changeCost: 0.15, activeCost: 0.1, paceCost: 0.5 },
  leastCycles: 2.6,
  leastExplained: 0.3,
  leastTravel: 0.1,
  leastSpeed: 0.06,
  leastOfSwing: 0.02,
  leastTrust: 0.5,
  slowTrust: 0.25,
  leastTrustPerOctave: 0.3,
  firmStanding: 1.25,
  returnShare: 0.72,
  turnedShare: 0.5,
  fullCost: 0.2,
  approach: { cycle: 0.205, side: 0.225 },
  lastShare: 0.08,
  lastSeconds: 0.05,
  lateTurnCost: 0.8,
};
