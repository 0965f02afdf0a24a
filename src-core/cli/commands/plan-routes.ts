import { PLANNING } from '../../../renderer/text/english/planning.ts';
import { buildPlanText } from '../../app/edit-plan.ts';
import { checkRosterText, withSquads } from '../../app/import-roster.ts';
import { planRoutes, planSquads, walkEditedPlan } from '../../app/plan-lesson.ts';
import { PLANNING_CALLS } from '../../contract/planning-calls.ts';
import { getPlanNames } from '../../host/lesson-names.ts';
import { savePlanText, saveRosterText } from '../../host/plan-versions.ts';
import { openFolder } from '../open-folder.ts';
import { type PlanOptions, refuse, report } from '../planning-end.ts';
import { formatTable } from '../table.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** The options of `plan routes` as typed. */
export interface RoutesOptions extends PlanOptions {
  readonly design?: string;
  readonly seed?: string;
}

/** `plan routes <lesson>`: routes as the plan's rotation asks for them, or as the options do. */
export async function runPlanRoutes(
  folder: string,
  options: RoutesOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const talk = { terminal, options, open };
  const { plan } = open.lesson;
  const { design = plan.rotation.design, seed = plan.rotation.seed } = options;
  const found = planRoutes({ ...plan, rotation: { ...plan.rotation, design, seed: Number(seed) } });
  if (!found.ok) return refuse(talk, found.problems);
  const { suggestion, plan: planned } = found.value;
  const saved = options.save ? await savePlanText(folder, buildPlanText(planned)) : null;
  if (saved && !saved.ok) return refuse(talk, saved.problems);
  const names = getPlanNames(open.lesson);
  const rows = suggestion.routes.map(({ squad, route, metres }) => [
    names.squad(squad),
    metres === null ? '' : PLANNING.metres(metres),
    route.join(' '),
  ]);
  const isSaved = saved !== null;
  return report(talk, {
    json: { ...suggestion, isSaved },
    text: `${formatTable(rows)}${PLANNING.nature(suggestion.nature)}\n${PLANNING.kept(isSaved)}\n`,
    problems: found.problems,
  });
}

/** The options of `plan squads` as typed. */
export interface SquadsOptions extends PlanOptions {
  readonly count?: string;
  readonly seed?: string;
}

/** `plan squads <lesson>`: squads of the roster's pupils, as the plan's rules ask for them. */
export async function runPlanSquads(
  folder: string,
  options: SquadsOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const talk = { terminal, options, open };
  const { plan, pupils } = open.lesson;
  const { count = plan.squads.length, seed = plan.grouping.seed } = options;
  if (!PLANNING_CALLS.suggestSquads.in.shape.count.safeParse(Number(count)).success) {
    terminal.say('! A plan holds 1 to 40 squads. Write --count 4, say.\n');
    return 2;
  }
  const ids = pupils.map(({ id }) => id);
  const found = planSquads(
    { ...plan, grouping: { ...plan.grouping, seed: Number(seed) } },
    ids,
    Number(count),
  );
  if (!found.ok) return refuse(talk, found.problems);
  const { squads, plan: planned } = found.value;
  if (options.save) {
    const roster = await open.ports.readText('roster.csv');
    if (!roster.ok) return refuse(talk, roster.problems);
    const slips = checkRosterText(roster.value);
    if (slips.length > 0) return refuse(talk, slips);
    const assignment = squads.flatMap(({ code, pupils: own }) =>
      own.map((pupil) => ({ pupil, squad: code })),
    );
    const saved = await savePlanText(folder, buildPlanText(planned));
    if (!saved.ok) return refuse(talk, saved.problems);
    const kept = await saveRosterText(folder, withSquads(roster.value, assignment));
    if (!kept.ok) return refuse(talk, kept.problems);
  }
  const names = new Map(pupils.map(({ id, given, family }) => [id, `${given} ${family}`]));
  const lines = squads.map(({ name, tablet, pupils: own }) => {
    const members = own.map((id) => names.get(id) ?? id).join(', ');
    return `${name} (${tablet}): ${members}\n`;
  });
  const isSaved = options.save === true;
  return report(talk, {
    json: { squads, isSaved },
    text: `${lines.join('')}${PLANNING.kept(isSaved)}\n`,
    problems: found.problems,
  });
}

/** The options of `walk` as typed. */
export interface WalkCommandOptions extends PlanOptions {
  readonly seed?: string;
  readonly spread?: string;
}

/** `walk <lesson>`: a simulated class on the plan's routes, and where it would queue. */
export async function runWalk(
  folder: string,
  options: WalkCommandOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const { seed = '1', spread = '0.2' } = options;
  if (!/^\d{1,6}$/.test(seed) || !(Number(spread) >= 0 && Number(spread) <= 0.9)) {
    terminal.say('! The options make no sense. Write --seed 7 and --spread 0.2, say.\n');
    return 2;
  }
  const walked = walkEditedPlan(open.lesson.plan, { seed: Number(seed), paceSpread: Number(spread) });
  if (!walked.ok) return refuse({ terminal, options, open }, walked.problems);
  const names = getPlanNames(open.lesson);
  const queues = walked.value.queues.map((queue) => `${PLANNING.queue(queue, names)}.\n`);
  const text = [
    ...(queues.length === 0 ? [`${PLANNING.noQueue}\n`] : queues),
    `${PLANNING.end(walked.value)}\n${PLANNING.estimate}\n`,
  ].join('');
  return report({ terminal, options, open }, { json: walked.value, text, problems: [] });
}
