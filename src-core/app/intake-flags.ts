import { isLasting } from '../evidence/evidence-problem.ts';
import type { PeriodWindow } from '../intake/periods.ts';
import { findQuarterHourShift } from '../intake/quarter-hour-shift.ts';
import type { TabletTimes } from '../intake/tablet-times.ts';
import type { Plan, SquadCode } from '../lesson/plan.ts';
import type { Flag } from '../matching/flag.ts';
import type { ClipReading } from './clip-reading.ts';
import type { RouteClip } from './sorted-clips.ts';

/** The flag of a file that cannot be read, or not to its end; null for a sound one. */
export function findUnreadableFlag(clip: ClipReading, squad: SquadCode): Flag | null {
  const { id, facts, mediaProblems, lookProblems } = clip;
  const undecoded = lookProblems.find(isLasting);
  const problem = facts?.holds === 'sound' ? { code: 'media-no-picture' } : (mediaProblems[0] ?? undecoded);
  return problem ? { code: 'unreadable', squad, clip: id, problem: problem.code } : null;
}

/** The flag of a clip that another period, or none, has to answer for. */
export function buildOutsideFlag({ reading, time }: RouteClip, squad: SquadCode): Flag {
  return { code: 'outside-period', squad, clip: reading.id, startMs: time.startMs ?? 0, period: time.period };
}

/** What is doubtful about one clip of the route: its time, its length. A still counts as no length at all. */
export function findClipFlags({ reading, time }: RouteClip, squad: SquadCode, plan: Plan): readonly Flag[] {
  const clip = reading.id;
  const flags: Flag[] = [];
  if (time.doubt !== null) {
    const { uncertaintySeconds, doubt } = time;
    flags.push({ code: 'clock-doubtful', squad, clip, doubt, uncertaintySeconds, shiftSeconds: null });
  }
  const durationSeconds = reading.facts?.holds === 'still' ? 0 : reading.facts?.durationSeconds;
  if (durationSeconds != null && durationSeconds < plan.tolerances.shortestClipSeconds) {
    flags.push({ code: 'too-short', squad, clip, durationSeconds });
  }
  return flags;
}

/**
 * The flag of a tablet whose clock fits no period, or leaves the lesson without a clip, with the correction in
 * whole quarter hours that would fit, where exactly one does. Null: the clock raises no doubt.
 */
export function findTabletFlag(
  squad: SquadCode,
  times: TabletTimes,
  lesson: { readonly window: PeriodWindow | null; readonly hasClips: boolean },
): Flag | null {
  const starts = times.clips.flatMap(({ startMs }) => startMs ?? []);
  const isLost = times.splitByBreaks || (!lesson.hasClips && starts.length > 0);
  if (!isLost || times.clock.from !== 'nothing') return null;
  return {
    code: 'clock-doubtful',
    squad,
    clip: null,
    doubt: 'tablet-clock',
    uncertaintySeconds: Number.POSITIVE_INFINITY,
    shiftSeconds: lesson.window && findQuarterHourShift(starts, [lesson.window]),
  };
}
