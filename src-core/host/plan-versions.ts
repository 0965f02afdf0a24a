import { mkdir, readdir, readFile } from 'node:fs/promises';
import path from 'node:path';
import { parsePlan } from '../app/plan-lesson.ts';
import type { PlanProblem } from '../lesson/lesson-problem.ts';
import type { Plan } from '../lesson/plan.ts';
import type { LessonCopyProblem } from '../lesson/planning-problem.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import { writeFileAtomically } from './atomic-write.ts';
import { describeWriteError } from './write-error.ts';

/** An earlier state of a plan: the instant at which another was saved over it. */
export interface PlanVersion {
  /** Such as `2025-05-15T13-40-00-123Z`, an instant in UTC that is a file name on every system. */
  readonly version: string;
  readonly savedMs: number;
}

const FOLDER = 'versions';
const NAME = /^plan (\d{4}-\d{2}-\d{2}T\d{2}-\d{2}-\d{2}-\d{3}Z)\.json$/;

/**
 * Writes plan.json and keeps the state before it in `versions/`, kept first: whatever happens in between, no state is
 * lost. A text that stands there already is not written again.
 */
export async function savePlanText(folder: string, text: string): Promise<Outcome<null, StorageProblem>> {
  const file = path.join(folder, 'plan.json');
  const before = await readFile(file).catch(() => null);
  if (before?.equals(Buffer.from(text, 'utf8'))) return succeed(null);
  if (before) {
    const kept = await keepVersion(folder, before);
    if (!kept.ok) return kept;
  }
  const written = await writeFileAtomically(file, text);
  return written.ok ? succeed(null) : written;
}

async function keepVersion(folder: string, bytes: Uint8Array): Promise<Outcome<number, StorageProblem>> {
  const versions = path.join(folder, FOLDER);
  try {
    await mkdir(versions, { recursive: true });
  } catch (error) {
    return fail(describeWriteError(error, versions));
  }
  const taken = new Set((await listPlanVersions(folder)).map(({ version }) => version));
  let instantMs = Date.now();
  while (taken.has(nameInstant(instantMs))) instantMs += 1;
  return writeFileAtomically(path.join(versions, `plan ${nameInstant(instantMs)}.json`), bytes);
}

function nameInstant(ms: number): string {
  return new Date(ms).toISOString().replace(/[:.]/g, '-');
}

/** The earlier states of a lesson's plan, newest first; none where there is no such folder. */
export async function listPlanVersions(folder: string): Promise<readonly PlanVersion[]> {
  const names = await readdir(path.join(folder, FOLDER)).catch(() => []);
  return names
    .flatMap((name) => {
      const version = NAME.exec(name)?.[1];
      if (version === undefined) return [];
      const savedMs = Date.parse(version.replace(/T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z/, 'T$1:$2:$3.$4Z'));
      return [{ version, savedMs }];
    })
    .sort((one, other) => other.savedMs - one.savedMs);
}

/** An earlier state of the plan, brought to the present format; fails where there is none of that name. */
export async function readPlanVersion(
  folder: string,
  version: string,
): Promise<Outcome<Plan, PlanProblem | LessonCopyProblem>> {
  const name = `plan ${version}.json`;
  // The name may come from a command line: only what stands in the list is a version.
  const text = NAME.test(name)
    ? await readFile(path.join(folder, FOLDER, name), 'utf8').catch(() => null)
    : null;
  return text === null ? fail({ code: 'version-unknown', version }) : parsePlan(text);
}

/** Writes roster.csv whole or not at all. Its earlier states are not kept: they hold names, and those who left. */
export async function saveRosterText(folder: string, text: string): Promise<Outcome<null, StorageProblem>> {
  const written = await writeFileAtomically(path.join(folder, 'roster.csv'), text);
  return written.ok ? succeed(null) : written;
}
