import type { LessonView } from '../../src-core/contract/lesson-view.ts';
import { findSquad, findStation, type Plan } from '../../src-core/lesson/plan.ts';
import { describePlanPlace, namePlanPath } from '../text/english/plan-place.ts';
import { nameHiddenSquad, ONE_CLIP, ONE_FILE } from '../text/english/window.ts';
import { buildLocalTimes, type LocalTimes } from '../text/local-time.ts';
import type { Names } from '../text/names.ts';

/** How codes and instants of a lesson are named to the teacher, with its ways of telling time. */
export interface LessonNames extends Names {
  readonly times: LocalTimes;
}

/** Names from a lesson's plan and clips; `language` null: the machine's own. */
export function buildLessonNames(
  { plan, clips }: Pick<LessonView, 'plan' | 'clips'>,
  language: string | null = null,
): LessonNames {
  const times = buildLocalTimes(language, plan.zone);
  const paths = new Map(clips.map(({ id, path }) => [id, path]));
  return {
    times,
    squad: (code) => findSquad(plan, code)?.name ?? code,
    station: (code) => {
      const place = findStation(plan, code)?.place;
      return place ? `${code}, ${place}` : code;
    },
    planPlace: (path) => describePlanPlace(plan, path),
    clip: (id) => paths.get(id)?.split('/').at(-1) ?? id,
    time: times.second,
  };
}

/** The same without whose anything is, so that marks are given blind; a file or a place in the plan may tell it too. */
export function hideSquads<Known extends Names>(names: Known, squads: Plan['squads']): Known {
  return {
    ...names,
    squad: (code) => nameHiddenSquad(squads.findIndex((squad) => squad.code === code)),
    clip: () => ONE_CLIP,
    file: () => ONE_FILE,
    planPlace: namePlanPath,
  };
}

/** Names before any lesson is open: codes as they are. */
export const BARE_NAMES: LessonNames = {
  ...buildLessonNames({
    plan: { zone: 'UTC', squads: [], stations: [] } as unknown as LessonView['plan'],
    clips: [],
  }),
  planPlace: namePlanPath,
};
