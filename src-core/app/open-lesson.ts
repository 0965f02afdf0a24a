import type { OpenProblem } from '../contract/problem.ts';
import { checkPlan } from '../lesson/check-plan.ts';
import type { PlanProblem } from '../lesson/lesson-problem.ts';
import type { Plan, SquadCode } from '../lesson/plan.ts';
import { type Pupil, parseRoster, type RosterReading } from '../lesson/roster.ts';
import { parseDeletionLog } from '../lesson-file/deletion-log.ts';
import { type JournalProblem, parseJournal } from '../lesson-file/journal-file.ts';
import { parsePlan } from '../lesson-file/plan-file.ts';
import type { JournalEvent } from '../marking/journal-event.ts';
import { type JournalState, replayJournal } from '../marking/replay.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import type { LessonPorts } from './ports.ts';

/** A lesson as written down: what was planned, who was there, what was decided. */
export interface OpenLesson {
  readonly plan: Plan;
  readonly pupils: readonly Pupil[];
  /** See {@link RosterReading}. */
  readonly unshown: readonly SquadCode[];
  readonly journal: JournalState;
  /** When its films were deleted last, ISO 8601 in UTC; null where they never were. */
  readonly filmsDeletedAt: string | null;
}

/** Slips in a plan that leave nothing to grade by: no time can be told, or one code means two things. */
const GRAVE: readonly PlanProblem['code'][] = ['plan-zone-unknown', 'plan-code-twice'];

/**
 * Reads plan, roster and journal. Fails without a readable plan, where it has a {@link GRAVE} slip, or where the
 * journal is not one or a newer program's; other slips leave a lesson that can be looked at and mended.
 */
export async function openLesson(ports: LessonPorts): Promise<Outcome<OpenLesson, OpenProblem>> {
  const planText = await ports.readText('plan.json');
  if (!planText.ok) return planText;
  if (planText.value === null) return fail({ code: 'lesson-without-plan' });
  const plan = parsePlan(planText.value);
  if (!plan.ok) return plan;
  const planProblems = checkPlan(plan.value);
  if (planProblems.some(isGraveSlip)) return fail<OpenProblem>(...planProblems);
  const roster = await readRoster(ports, plan.value);
  const journal = await openJournal(ports);
  if (!journal.ok) return journal;
  return succeed<OpenLesson, OpenProblem>(
    {
      plan: plan.value,
      pupils: roster.pupils,
      unshown: roster.unshown,
      journal: journal.value.state,
      filmsDeletedAt: await readFilmsDeletion(ports),
    },
    [...plan.problems, ...planProblems, ...roster.problems, ...journal.problems],
  );
}

async function readFilmsDeletion(ports: LessonPorts): Promise<string | null> {
  const text = await ports.readText('deletions.jsonl');
  const deletions = text.ok ? parseDeletionLog(text.value ?? '') : [];
  return deletions.findLast(({ what }) => what === 'films')?.at ?? null;
}

async function readRoster(
  ports: LessonPorts,
  plan: Plan,
): Promise<Omit<RosterReading, 'problems'> & { readonly problems: readonly OpenProblem[] }> {
  const text = await ports.readText('roster.csv');
  if (!text.ok) return { pupils: [], unshown: plan.squads.map(({ code }) => code), problems: text.problems };
  return text.value === null
    ? { pupils: [], unshown: [], problems: [{ code: 'lesson-without-roster' }] }
    : parseRoster(text.value, plan);
}

/** Whether a plan with this slip can be opened no more. */
export function isGraveSlip({ code }: { readonly code: string }): boolean {
  return GRAVE.some((grave) => grave === code);
}

/** The journal as read and as replayed. */
export interface OpenJournal {
  readonly events: readonly JournalEvent[];
  readonly state: JournalState;
}

/** Fails where the journal cannot be read at all; damaged lines are problems. */
export async function openJournal(
  ports: LessonPorts,
): Promise<Outcome<OpenJournal, JournalProblem | StorageProblem>> {
  const text = await ports.readJournal();
  if (!text.ok) return text;
  const events = parseJournal(text.value);
  if (!events.ok) return events;
  return succeed({ events: events.value, state: replayJournal(events.value) }, events.problems);
}
