import type { PlanProblem } from './lesson-problem.ts';
import type { Plan } from './plan.ts';
import { findSquadByName } from './squad-name.ts';

/**
 * Everything in a well-formed plan that would make marking fail later: codes used twice, routes through unknown
 * or repeated stations, squads that meet, periods that end before they start. Empty: nothing to mend.
 */
export function checkPlan(plan: Plan): readonly PlanProblem[] {
  return [
    ...checkZone(plan),
    ...checkCodes(plan),
    ...checkSquadNames(plan),
    ...checkRoutes(plan),
    ...checkMeetings(plan),
    ...checkPeriods(plan),
    ...checkRanges(plan),
  ];
}

function checkZone(plan: Plan): PlanProblem[] {
  try {
    new Intl.DateTimeFormat('en', { timeZone: plan.zone });
    return [];
  } catch {
    return [{ code: 'plan-zone-unknown', path: 'zone', zone: plan.zone }];
  }
}

function checkCodes(plan: Plan): PlanProblem[] {
  const lists: readonly [string, readonly { code: string }[]][] = [
    ['stations', plan.stations],
    ['squads', plan.squads],
    ['periods', plan.periods],
    ['rubric.clip', plan.rubric.clip],
    ['rubric.squad', plan.rubric.squad],
  ];
  return lists.flatMap(([path, items]) =>
    items.flatMap(({ code }, index): PlanProblem[] =>
      items.findIndex((item) => item.code === code) < index
        ? [{ code: 'plan-code-twice', path: `${path}[${index}].code`, value: code }]
        : [],
    ),
  );
}

function checkSquadNames(plan: Plan): PlanProblem[] {
  return plan.squads.flatMap((squad, index) =>
    [squad.code, squad.name, squad.pinnie.name, squad.tablet].flatMap((name): PlanProblem[] => {
      if (findSquadByName(name, plan.squads)?.code === squad.code) return [];
      const other = plan.squads.find(
        (candidate) => candidate !== squad && findSquadByName(name, [candidate]),
      );
      return other
        ? [{ code: 'plan-name-ambiguous', path: `squads[${index}]`, other: other.code, name }]
        : [];
    }),
  );
}

function checkRoutes(plan: Plan): PlanProblem[] {
  const known = new Set(plan.stations.map((station) => station.code));
  return plan.squads.flatMap((squad, index) => {
    const path = `squads[${index}].route`;
    const first = squad.route[0] ?? '';
    const problems: PlanProblem[] = squad.route.flatMap((station, slot): PlanProblem[] => {
      if (!known.has(station)) return [{ code: 'plan-station-unknown', path: `${path}[${slot}]`, station }];
      return squad.route.indexOf(station) < slot
        ? [{ code: 'plan-station-repeated', path: `${path}[${slot}]`, station }]
        : [];
    });
    if (squad.startsAt !== first) {
      problems.push({
        code: 'plan-start-differs',
        path: `squads[${index}].startsAt`,
        start: squad.startsAt,
        first,
      });
    }
    return problems;
  });
}

function checkMeetings(plan: Plan): PlanProblem[] {
  return plan.squads.flatMap((squad, index) =>
    squad.route.flatMap((station, slot): PlanProblem[] => {
      const earlier = plan.squads.slice(0, index).find((other) => other.route[slot] === station);
      if (!earlier) return [];
      return [
        {
          code: 'plan-squads-meet',
          path: `squads[${index}].route[${slot}]`,
          station,
          slot,
          squads: [earlier.code, squad.code],
        },
      ];
    }),
  );
}

function checkPeriods(plan: Plan): PlanProblem[] {
  const problems = plan.periods.flatMap((period, index): PlanProblem[] => {
    const path = `periods[${index}]`;
    if (period.end <= period.start) {
      return [{ code: 'plan-period-reversed', path, start: period.start, end: period.end }];
    }
    const other = plan.periods
      .slice(0, index)
      .find((earlier) => earlier.start < period.end && period.start < earlier.end);
    return other ? [{ code: 'plan-periods-overlap', path, other: other.code }] : [];
  });
  const { period } = plan.lesson;
  return plan.periods.some(({ code }) => code === period)
    ? problems
    : [...problems, { code: 'plan-period-unknown', path: 'lesson.period', period }];
}

function checkRanges(plan: Plan): PlanProblem[] {
  const cycles = plan.stations.flatMap(({ cycleSeconds }, index): PlanProblem[] =>
    cycleSeconds && cycleSeconds[0] > cycleSeconds[1]
      ? [{ code: 'plan-range-reversed', path: `stations[${index}].cycleSeconds` }]
      : [],
  );
  const scale = plan.scale.flatMap(({ fromPercent }, index): PlanProblem[] =>
    index > 0 && fromPercent >= (plan.scale[index - 1]?.fromPercent ?? 0)
      ? [{ code: 'plan-scale-order', path: `scale[${index}].fromPercent` }]
      : [],
  );
  return [...cycles, ...scale];
}
