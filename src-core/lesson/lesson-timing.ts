import type { Seconds } from '../platform/units.ts';
import type { Plan, Station } from './plan.ts';

/** Seconds of the day at a local time `HH:MM`. */
function readLocalSeconds(time: string): Seconds {
  const [hours = 0, minutes = 0] = time.split(':').map(Number);
  return hours * 3600 + minutes * 60;
}

/** How long the lesson's period is; null where the plan has no such period, or it ends before it starts. */
export function findPeriodSeconds({ periods, lesson }: Pick<Plan, 'periods' | 'lesson'>): Seconds | null {
  const period = periods.find(({ code }) => code === lesson.period);
  if (!period) return null;
  const seconds = readLocalSeconds(period.end) - readLocalSeconds(period.start);
  return seconds > 0 ? seconds : null;
}

/** What warm-up and clearing up leave of the period for the circuit; null where there is no period. May be below 0. */
export function findWorkSeconds(plan: Pick<Plan, 'periods' | 'lesson' | 'timing'>): Seconds | null {
  const period = findPeriodSeconds(plan);
  const { warmUpMinutes, clearUpMinutes } = plan.timing;
  return period === null ? null : period - 60 * (warmUpMinutes + clearUpMinutes);
}

/** A slot's share of the work time: the time for the longest route in equal parts; null as {@link findWorkSeconds}. */
export function findSlotSeconds(
  plan: Pick<Plan, 'periods' | 'lesson' | 'timing' | 'squads'>,
): Seconds | null {
  const work = findWorkSeconds(plan);
  const slots = Math.max(1, ...plan.squads.map(({ route }) => route.length));
  return work === null ? null : work / slots;
}

/**
 * How long a station's reps take at the quickest and at the slowest usual tempo; null without one. Of a movement
 * counted by sides two reps make a cycle.
 */
export function findRepsSeconds({
  reps,
  counting,
  cycleSeconds,
}: Pick<Station, 'reps' | 'counting' | 'cycleSeconds'>): readonly [Seconds, Seconds] | null {
  if (!cycleSeconds) return null;
  const cycles = counting === 'side' ? reps / 2 : reps;
  return [cycles * cycleSeconds[0], cycles * cycleSeconds[1]];
}

/** The given walking distance between two stations in metres, the same both ways; null where the plan has none. */
export function findMetres({ rotation }: Pick<Plan, 'rotation'>, one: string, other: string): number | null {
  const found = rotation.distances.find(
    ({ between }) => between.includes(one) && between.includes(other) && one !== other,
  );
  return found?.metres ?? null;
}

/** A group's walk with one tablet, in metres a second; common practice for planning on foot is 1.2 to 1.4. */
export const WALK_METRES_PER_SECOND = 1.2;

/** Reading the card, lining up and setting the tablet down, before the first rep; an estimate of ours. */
export const SET_UP_SECONDS: Seconds = 45;
