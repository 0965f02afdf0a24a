import { openJournal } from '../../app/open-lesson.ts';
import { buildNoDecisions, compareWithSecond } from '../../app/second-marking.ts';
import type { Handlers } from '../../contract/dispatch.ts';
import type { SecondMarkingView } from '../../contract/second-calls.ts';
import { succeed } from '../../platform/outcome.ts';
import { listSecondMarkers, withSecondJournal } from '../second-marks.ts';
import { type DeskParts, withLesson } from './desk-parts.ts';
import type { CallContext } from './face.ts';
import type { LessonSession } from './lesson-session.ts';

/** The calls about second markings. */
export function buildSecondCalls(
  desk: DeskParts,
): Pick<Handlers<CallContext>, 'openSecondMarking' | 'compareMarkings'> {
  return {
    openSecondMarking: ({ lesson, who }) =>
      withLesson(desk, lesson, async (first) => {
        const opened = await desk.lessons.openSecond(first, who);
        if (!opened.ok) return opened;
        const { value: second, problems } = opened;
        return succeed({ lesson: second.lesson, update: second.getUpdate(null) }, problems);
      }),
    compareMarkings: ({ lesson }) =>
      withLesson(desk, lesson, async (session) => {
        const files = await listSecondMarkers(session.folder);
        const markings = await Promise.all(files.map((file) => compare(session, file)));
        return succeed({ markings });
      }),
  };
}

/** A journal that cannot be read holds no marks; its problems say why. */
async function compare(session: LessonSession, file: string): Promise<SecondMarkingView> {
  const ports = withSecondJournal(session.getPorts(), session.folder, file);
  const journal = await openJournal(ports);
  const decisions = journal.ok ? journal.value.state.decisions : buildNoDecisions();
  const who = (journal.ok ? journal.value.events.at(-1)?.who : undefined) ?? file;
  return {
    who,
    comparison: compareWithSecond(session.getGraded(), decisions),
    problems: journal.problems,
  };
}
