import type { CallProblem } from '../contract/call-problem.ts';
import type { MarkProblem, OpenProblem } from '../contract/problem.ts';
import { parseJournal } from '../lesson-file/journal-file.ts';
import { compareMarkings, type MarkingComparison } from '../marking/agreement/compare-markings.ts';
import { getBlindDecisions, isSecondAct } from '../marking/agreement/second-decisions.ts';
import type { Decisions } from '../marking/decisions.ts';
import type { JournalEvent } from '../marking/journal-event.ts';
import type { JournalState } from '../marking/replay.ts';
import { fail, type Outcome, succeed } from '../platform/outcome.ts';
import type { GradedLesson } from './graded-lesson.ts';
import { mergeIntoLesson } from './mark-lesson.ts';
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

/**
 * Takes over another copy of a second marker's own journal, by event id. Refuses all of a journal that holds anything a
 * second marking may not, or any event of the first: the two would no longer be two.
 *
 * @param first reads the lesson's own journal
 */
export async function mergeIntoSecond(
  second: LessonPorts,
  first: LessonPorts,
  otherText: string,
): Promise<Outcome<readonly JournalEvent[], MarkProblem | SecondOnly>> {
  const [journal, other] = [await openJournal(first), parseJournal(otherText)];
  if (!journal.ok) return journal;
  if (!other.ok) return other;
  const firsts = new Set(journal.value.events.map(({ id }) => id));
  if (other.value.some(({ id, what }) => firsts.has(id) || !isSecondAct(what)))
    return fail({ code: 'second-marking-only' });
  return mergeIntoLesson(second, otherText);
}

type SecondOnly = Extract<CallProblem, { code: 'second-marking-only' }>;
