import { namePlanPath } from '../../renderer/text/english/plan-place.ts';
import type { Names } from '../../renderer/text/names.ts';
import type { GradedLesson } from '../app/graded-lesson.ts';
import type { OpenLesson } from '../app/open-lesson.ts';

/** What squads, stations and times are called in this lesson; clips by id until they are read. */
export function getPlanNames({ plan }: OpenLesson): Names {
  const time = new Intl.DateTimeFormat('en-GB', { timeStyle: 'medium', timeZone: plan.zone });
  const day = new Intl.DateTimeFormat('en-CA', { dateStyle: 'short', timeZone: plan.zone });
  const squads = new Map(plan.squads.map(({ code, name }) => [code, name]));
  const stations = new Map(plan.stations.map(({ code, place }) => [code, `${code} ${place}`]));
  return {
    squad: (code) => squads.get(code) ?? code,
    station: (code) => stations.get(code) ?? code,
    planPlace: namePlanPath,
    clip: (id) => id,
    time: (ms) => {
      const date = day.format(ms);
      return date === plan.lesson.date ? time.format(ms) : `${date} ${time.format(ms)}`;
    },
  };
}

/** The same, with clips by their files. */
export function getLessonNames(graded: GradedLesson): Names {
  const clips = [...graded.squads.flatMap(({ clips }) => clips), ...graded.aside];
  const paths = new Map(clips.map(({ reading }) => [reading.id, reading.copies[0]?.file.path ?? reading.id]));
  return { ...getPlanNames(graded.lesson), clip: (id) => paths.get(id) ?? id };
}
