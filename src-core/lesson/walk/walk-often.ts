import type { Seconds } from '../../platform/units.ts';
import type { Plan } from '../plan.ts';
import { type WalkedPlan, walkPlan } from './walk-plan.ts';

/** One class simulated many times, each time with other paces and tempos. */
export interface OftenWalked {
  readonly walks: number;
  /** In how many of them a squad waits as long as is worth telling. */
  readonly waiting: number;
  /** In how many of them the last squad is done later than the plan has time for. */
  readonly late: number;
  /** When the last squad is done in the slowest of them. */
  readonly latestEndSeconds: Seconds;
  /** The one with the longest wait; where nobody waits, the slowest. */
  readonly worst: WalkedPlan;
}

/** How many draws are told: enough to tell seldom from often, few enough to be reckoned with each edit. */
const WALKS = 50;

/** Walks a plan with fifty seeds, from 1 on. `worthTelling`: a shorter wait is no queue, in seconds. */
export function walkOften(plan: Plan, worthTelling: Seconds): OftenWalked {
  const walks = Array.from({ length: WALKS }, (_, at) => walkPlan(plan, { seed: at + 1 }));
  const getWait = ({ queues }: WalkedPlan) => queues[0]?.waitSeconds ?? 0;
  const worst = walks.reduce((one, other) => {
    const more = getWait(other) - getWait(one) || other.endSeconds - one.endSeconds;
    return more > 0 ? other : one;
  });
  return {
    walks: WALKS,
    waiting: walks.filter((walk) => getWait(walk) >= worthTelling).length,
    late: walks.filter(({ endSeconds, workSeconds }) => workSeconds !== null && endSeconds > workSeconds)
      .length,
    latestEndSeconds: Math.max(...walks.map(({ endSeconds }) => endSeconds)),
    worst,
  };
}
