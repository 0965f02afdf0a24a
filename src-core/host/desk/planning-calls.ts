import path from 'node:path';
import { checkRosterText, withoutAttendance } from '../../app/import-roster.ts';
import {
  buildRosterText,
  comparePlans,
  parseRosterTable,
  planLessonCopy,
  planNewLesson,
  planSquads,
} from '../../app/plan-lesson.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { LessonUpdate } from '../../contract/lesson-update.ts';
import type { Problem } from '../../contract/problem.ts';
import type { Plan } from '../../lesson/plan.ts';
import { fail, type Outcome, succeed } from '../../platform/outcome.ts';
import { type LessonContents, makeLesson } from '../make-lesson.ts';
import { readExercises, takeExercises } from '../own-library.ts';
import { listPlanVersions, readPlanVersion } from '../plan-versions.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import { isPlainPath } from './inbox.ts';
import type { LessonSession } from './lesson-session.ts';

type PlanningNames =
  | 'suggestSquads'
  | 'readLibrary'
  | 'importLibrary'
  | 'newLesson'
  | 'copyLesson'
  | 'listVersions'
  | 'readVersion'
  | 'comparePlans';

/** The calls with which a lesson is planned; those about its roster are in `roster-calls.ts`. */
export function buildPlanningCalls(desk: DeskParts): Pick<Handlers<CallContext>, PlanningNames> {
  const { home } = desk.options;
  return {
    suggestSquads: ({ lesson, plan, count }) =>
      withLesson(desk, lesson, async (session) => {
        const pupils = session.getView().pupils.map(({ id }) => id);
        return planSquads(plan, pupils, count);
      }),
    readLibrary: async () => {
      const shelf = await readExercises(home);
      return shelf.ok ? succeed({ exercises: shelf.value }, shelf.problems) : shelf;
    },
    importLibrary: async ({ text }) => {
      const shelf = await takeExercises(home, text);
      return shelf.ok ? succeed({ exercises: shelf.value }, shelf.problems) : shelf;
    },
    newLesson: ({ into, folderName, ...facts }) => {
      const plan = planNewLesson(facts);
      const contents = { roster: buildRosterText(parseRosterTable(null)), photosFrom: null };
      return plan.ok
        ? make(desk, { into, folderName }, { ...contents, plan: plan.value })
        : Promise.resolve(plan);
    },
    copyLesson: ({ lesson, into, folderName, ...next }) =>
      withLesson(desk, lesson, async (session) => {
        const plan = planLessonCopy(session.getView().plan, next);
        if (!plan.ok) return plan;
        const roster = await session.getPorts().readText('roster.csv');
        if (!roster.ok) return roster;
        const slips = checkRosterText(roster.value);
        if (slips.length > 0) return fail(...slips);
        const contents = { roster: withoutAttendance(roster.value ?? ''), photosFrom: session.folder };
        return make(desk, { into, folderName }, { ...contents, plan: plan.value });
      }),
    listVersions: ({ lesson }) =>
      withLesson(desk, lesson, async ({ folder }) =>
        succeed({ versions: [...(await listPlanVersions(folder))] }),
      ),
    readVersion: ({ lesson, version }) =>
      withLesson(desk, lesson, async (session) => {
        const plan = await readState(session, version);
        return plan.ok ? succeed({ plan: plan.value }) : plan;
      }),
    comparePlans: ({ lesson, from, to }) =>
      withLesson(desk, lesson, async (session) => {
        const [was, now] = [await readState(session, from), await readState(session, to)];
        if (!was.ok) return was;
        return now.ok ? succeed({ changes: comparePlans(was.value, now.value) }) : now;
      }),
  };
}

/** A state of the plan; null is the present one. */
async function readState(session: LessonSession, version: string | null): Promise<Outcome<Plan, Problem>> {
  return version === null ? succeed(session.getView().plan) : readPlanVersion(session.folder, version);
}

interface NewPlace {
  readonly into: string;
  readonly folderName: string;
}

async function make(
  desk: DeskParts,
  { into, folderName }: NewPlace,
  contents: LessonContents,
): Promise<Outcome<{ update: LessonUpdate }, Problem>> {
  const parent = desk.tokens.find(into);
  if (parent === null) return fail({ code: 'folder-unknown' });
  if (folderName.includes('/') || !isPlainPath(folderName)) {
    return fail({ code: 'file-name-bad', path: folderName });
  }
  const folder = path.join(parent, folderName);
  const made = await makeLesson(folder, contents);
  if (!made.ok) return made;
  const opened = await desk.lessons.openFolder(folder);
  return opened.ok ? succeed({ update: opened.value.getUpdate(null) }, opened.problems) : opened;
}
