import path from 'node:path';
import { describePlanChange } from '../../../renderer/text/english/plan-changes.ts';
import { PLANNING } from '../../../renderer/text/english/planning.ts';
import { checkRosterText, withoutAttendance } from '../../app/import-roster.ts';
import {
  buildRosterText,
  comparePlans,
  parseRosterTable,
  planLessonCopy,
  planNewLesson,
} from '../../app/plan-lesson.ts';
import { type LessonContents, makeLesson } from '../../host/make-lesson.ts';
import { listPlanVersions, readPlanVersion } from '../../host/plan-versions.ts';
import { openFolder } from '../open-folder.ts';
import { type PlanOptions, type PlanTalk, refuse, report } from '../planning-end.ts';
import type { ExitCode, Terminal } from '../terminal.ts';

/** `plan versions <lesson>`: states that were kept when another plan was saved over them, newest first. */
export async function runPlanVersions(
  folder: string,
  options: PlanOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const versions = await listPlanVersions(folder);
  const lines = versions.map(({ version }) => `${version}\n`).join('');
  const text = lines === '' ? `${PLANNING.noVersion}\n` : lines;
  return report({ terminal, options, open }, { json: { versions }, text, problems: [] });
}

/** The options of `plan compare` as typed. */
export interface CompareOptions extends PlanOptions {
  /** A version as `plan versions` names it; the newest unless told. */
  readonly since?: string;
}

/** `plan compare <lesson>`: what changed since an earlier state of the plan. */
export async function runPlanCompare(
  folder: string,
  options: CompareOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const version = options.since ?? (await listPlanVersions(folder))[0]?.version;
  if (version === undefined) {
    const text = `${PLANNING.noVersion}\n`;
    return report({ terminal, options, open }, { json: { changes: [] }, text, problems: [] });
  }
  const was = await readPlanVersion(folder, version);
  if (!was.ok) return refuse({ terminal, options, open }, was.problems);
  const changes = comparePlans(was.value, open.lesson.plan);
  const lines = changes.map((change) => `${describePlanChange(change)}\n`).join('');
  const text = lines === '' ? `${PLANNING.noChange}\n` : lines;
  return report({ terminal, options, open }, { json: { changes }, text, problems: [] });
}

/** The options of `plan copy` as typed. */
export interface CopyOptions extends PlanOptions {
  readonly date: string;
  readonly code?: string;
}

/** `plan copy <lesson> <folder>`: the lesson for another day, without clips and marks. */
export async function runPlanCopy(
  [folder, target]: readonly [string, string],
  options: CopyOptions,
  terminal: Terminal,
): Promise<ExitCode> {
  const open = await openFolder(folder, options, terminal);
  if (!open) return 2;
  const talk = { terminal, options, open };
  const plan = planLessonCopy(open.lesson.plan, { date: options.date, code: options.code ?? null });
  if (!plan.ok) return refuse(talk, plan.problems);
  const roster = await open.ports.readText('roster.csv');
  if (!roster.ok) return refuse(talk, roster.problems);
  const slips = checkRosterText(roster.value);
  if (slips.length > 0) return refuse(talk, slips);
  const contents = { roster: withoutAttendance(roster.value ?? ''), photosFrom: folder };
  return make(target, { ...contents, plan: plan.value }, talk);
}

/** The options of `plan new` as typed. */
export interface NewOptions extends PlanOptions {
  readonly title: string;
  readonly school: string;
  readonly class: string;
  readonly date: string;
  readonly zone: string;
  /** `10:40-11:25`. */
  readonly period: string;
  readonly code: string;
}

/** `plan new <folder>`: a lesson folder with a plan to begin with. */
export async function runPlanNew(folder: string, options: NewOptions, terminal: Terminal): Promise<ExitCode> {
  const { title, school, class: className, date, zone, code } = options;
  const [start, end] = options.period.split('-');
  const lesson = { code, revision: 1, title, school, className, date, period: 'p1' };
  const plan = planNewLesson({ lesson, zone, periods: [{ code: 'p1', start, end }] });
  const talk = { terminal, options, open: null };
  if (!plan.ok) return refuse(talk, plan.problems);
  const roster = buildRosterText(parseRosterTable(null));
  return make(folder, { plan: plan.value, roster, photosFrom: null }, talk);
}

async function make(folder: string, contents: LessonContents, talk: PlanTalk): Promise<ExitCode> {
  const made = await makeLesson(path.resolve(folder), contents);
  if (!made.ok) return refuse(talk, made.problems);
  return report(talk, { json: { lesson: folder }, text: `${PLANNING.madeAt(folder)}\n`, problems: [] });
}
