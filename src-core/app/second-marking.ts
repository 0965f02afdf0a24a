import type { OpenProblem } from '../contract/problem.ts';
import { compareMarkings, type MarkingComparison } from '../marking/agreement/compare-markings.ts';
import { getBlindDecisions } from '../marking/agreement/second-decisions.ts';
import type { Decisions } from '../marking/decisions.ts';
import type { JournalState } from '../marking/replay.ts';
import { type Outcome, succeed } from '../platform/outcome.ts';
import type { GradedLesson } from './graded-lesson.ts';
import { type OpenLesson, openJournal } from './open-lesson.ts';
import type { LessonPorts } from './ports.ts';

export { isSecondAct } from '../marking/agreement/second-decisions.ts';
export { buildNoDecisions } from '../marking/decisions.ts';

/** A lesson as a second marker sees it: see `marking/agreement/second-decisions.ts`. `ports` read their journal. */
export async function openSecondLesson(
  ports: LessonPorts,
  lesson: OpenLesson,
): Promise<Outcome<OpenLesson, OpenProblem>> {
  const second = await openJournal(ports);
  if (!second.ok) return second;
  const journal = blindJournal(lesson.journal.decisions, second.value.state);
  return succeed<OpenLesson, OpenProblem>({ ...lesson, journal }, second.problems);
}

/** A second marker's journal over what the first has settled that is no mark. */
export function blindJournal(first: Decisions, second: JournalState): JournalState {
  return { ...second, decisions: getBlindDecisions(first, second.decisions) };
}

/** The lesson's marking against a second one, clip by clip in the order of squads and routes. */
export function compareWithSecond(graded: GradedLesson, second: Decisions): MarkingComparison {
  const slots = graded.score.squads.flatMap((squad) => squad.slots);
  return compareMarkings({
    plan: graded.lesson.plan,
    first: graded.lesson.journal.decisions,
    second,
    clips: slots.flatMap(({ clip }) => (clip ? [clip.clip] : [])),
  });
}
