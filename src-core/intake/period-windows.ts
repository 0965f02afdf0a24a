import type { Plan } from '../lesson/plan.ts';
import type { EpochMs } from '../platform/units.ts';
import type { PeriodWindow } from './periods.ts';
import { findLocalInstants } from './zoned-time.ts';

/**
 * The plan's periods on the lesson's day as instants, daylight saving included. A bell in an hour that comes twice
 * is taken early for the start and late for the end, so that the window holds both. Periods whose bells no clock
 * of the zone ever shows are left out.
 */
export function getPeriodWindows(plan: Plan): readonly PeriodWindow[] {
  return plan.periods.flatMap(({ code, start, end }): PeriodWindow[] => {
    const startMs = findBell(plan, start, 'earlierMs');
    const endMs = findBell(plan, end, 'laterMs');
    return startMs === null || endMs === null ? [] : [{ code, startMs, endMs }];
  });
}

function findBell(plan: Plan, time: string, side: 'earlierMs' | 'laterMs'): EpochMs | null {
  const instants = findLocalInstants(`${plan.lesson.date}T${time}:00`, plan.zone);
  if (instants.kind === 'unique') return instants.ms;
  return instants.kind === 'ambiguous' ? instants[side] : null;
}
