import type { PathRule } from '../signal/lag-path.ts';
import type { ScoreRule } from '../signal/lag-scores.ts';
import type { MatchRule } from '../signal/phase-match.ts';
import type { TrackRule } from '../signal/phase-path.ts';

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
  /** Mean score of its cycle length that a run must have. */
  readonly leastScore: number;
  /** How far the movement must go from turn to turn, in pixels of an 80-pixel frame; breathing and tremble do not. */
  readonly leastTravel: number;
  /** The same against its pace, in such pixels per second of a cycle: a slow sway must go further to be a movement. */
  readonly leastSpeed: number;
  /** The same as a share of the camera's own way in a cycle: what a panning camera leaves of the background is no movement. */
  readonly leastOfSwing: number;
  /**
   * How well cycles agree times the square root of their number: few must agree better than many. Counted by what agrees
   * less, the lags' mean score or the cells with those a cycle later; see `signal/cycle-agreement.ts`.
   */
  readonly leastTrust: number;
  /** The same per second of a cycle: what goes slowly to and fro, as people walk about, looks alike by chance. */
  readonly leastTrustPerSecond: number;
  /** The same of a movement that was followed over the whole picture: steps and strides go anywhere. */
  readonly leastTrustAnywhere: number;
  /** What a cycle later must agree, as a share of what two cycles later do; else the cycle is twice as long. */
  readonly returnShare: number;
  /** How much of what runs back in place a cycle later counts against its being the other side's turn. */
  readonly turnedShare: number;
  /** Cost a frame at the ends of a run from or to rest; see `cycle-runs.ts`. */
  readonly fullCost: number;
  /** Part of a cycle that must be seen beyond its half where the clip cuts it off; people count what they saw finished. */
  readonly cutShare: number;
  /** Part of a cycle at either end that a start from rest, or a stop, may add without being a rep. */
  readonly approach: number;
}

/**
 * See each part for what its numbers mean. What set the later ones, on the filmed sweep unless said otherwise:
 *
 * - `leastTrust`: clips without reps trust their best guess up to 0.3 in nine of ten, those with reps from 0.4 on.
 * - `leastTrustPerSecond`: people going to and fro every 4 s are trusted 0.5, slow exercises of 4 s and more 0.8 and over.
 * - `leastTrustAnywhere`: walks and games reach 0.4 once what turns back in place is out.
 * - `returnShare`: half a jumping jack comes back with 0.5 of what the whole does, at most; whole cycles with 0.75 and more.
 * - `turnedShare`: half a walk to and fro is mirrored at 0.5 and opposed in place at -0.4 to -0.5.
 * - `cutShare`: people who counted research footage left out the last 0.4 to 0.6 of a cycle wherever it was cut off.
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
  leastExplained: 0.12,
  leastScore: 0.05,
  leastTravel: 0.2,
  leastSpeed: 0.06,
  leastOfSwing: 0.02,
  leastTrust: 0.4,
  leastTrustPerSecond: 0.14,
  leastTrustAnywhere: 0.6,
  returnShare: 0.6,
  turnedShare: 0.5,
  fullCost: 0.2,
  cutShare: 0.1,
  approach: 0.205,
};
