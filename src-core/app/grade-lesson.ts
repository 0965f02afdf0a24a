import type { ClipsProblem } from '../contract/clips-problem.ts';
import { getPeriodWindows } from '../intake/period-windows.ts';
import type { Plan } from '../lesson/plan.ts';
import type { Decisions } from '../marking/decisions.ts';
import { fillSlots, listFlagRefs } from '../marking/fill-slots.ts';
import { scoreLesson } from '../marking/points.ts';
import { countPresent } from '../marking/presence.ts';
import { type Flag, getFlagKey } from '../matching/flag.ts';
import { matchSquad, type SquadMatch } from '../matching/match-squad.ts';
import type { ClipId, PlacedClip } from '../matching/observation.ts';
import { findFilmsDeleted } from './check-graded.ts';
import { getPath } from './clip-reading.ts';
import type { GradedClip, GradedLesson, GradedSquad, RaisedFlag } from './graded-lesson.ts';
import { type ObservedClip, observeClips } from './observe-clips.ts';
import type { OpenLesson } from './open-lesson.ts';
import type { Job, LessonPorts } from './ports.ts';
import { proposeClip } from './propose-clip.ts';
import { type ClipsReading, readClips } from './read-clips.ts';
import {
  addMovements,
  listWantedMovements,
  readMovements,
  readWatches,
  type WatchOrder,
} from './read-evidence.ts';
import { getKnownStation } from './settle-owners.ts';
import { sortClips } from './sort-clips.ts';
import type { RouteClip, SortedClips, SquadClips } from './sorted-clips.ts';

export { findClipPoints } from '../marking/find-clip-points.ts';

/** How far a lesson's clips are looked at before they are graded. */
export interface GradeOptions {
  /** `all`: clips that were never watched whole are watched now, which takes minutes. Default: `none`. */
  readonly watch?: WatchOrder;
}

/** Slots decide which movements are read, and these may move a clip to another slot; it settles at once or nearly. */
const MOST_ROUNDS = 4;

/** From a folder of clips to proposals: reads, sorts, matches, flags, proposes, adds up. Nothing is decided. */
export async function gradeLesson(
  ports: LessonPorts,
  lesson: OpenLesson,
  job: Job,
  { watch = 'none' }: GradeOptions = {},
): Promise<GradedLesson> {
  let reading = await readWatches(ports, await readClips(ports, lesson.plan, job), {
    plan: lesson.plan,
    job,
    watch,
  });
  let graded = gradeClips(lesson, reading);
  for (let round = 1; round < MOST_ROUNDS; round++) {
    const wanted = listWantedMovements(graded);
    if (wanted.length === 0) break;
    reading = addMovements(reading, await readMovements(ports, wanted, job));
    graded = gradeClips(lesson, reading);
  }
  return graded;
}

/** The same from clips that were read already; pure, and quick enough to run after every decision. */
export function gradeClips(lesson: OpenLesson, reading: ClipsReading): GradedLesson {
  const { plan, pupils, journal } = lesson;
  const { decisions } = journal;
  const sorted = sortClips(reading.clips, decisions, { plan, windows: getPeriodWindows(plan) });
  const observed = observeClips(
    sorted.squads.flatMap(({ clips }) => clips.map((clip) => clip.reading)),
    plan,
    decisions,
  );
  const matches = sorted.squads.map((own) => ({
    own,
    match: matchClips(own, { plan, decisions, observed }),
  }));
  const matchFlags = matches.flatMap(({ match }) => match.flags);
  const flags = [...sorted.flags, ...matchFlags.map((flag) => addStrays(flag, sorted, decisions))].map(
    (flag) => raise(flag, decisions),
  );
  const squads = matches.map(({ own, match }) =>
    gradeSquad(own, match, { plan, pupils, decisions, flags, observed }),
  );
  const proposals = new Map(
    squads.flatMap(({ clips }) => clips.map((clip) => [clip.reading.id, clip.proposals])),
  );
  return {
    lesson,
    squads,
    aside: sorted.aside,
    flags,
    score: scoreLesson({
      plan,
      pupils,
      decisions,
      proposals,
      squads: squads.map(({ squad, clips }) => fillSlots(squad, clips, flags)),
      flags: listFlagRefs(flags),
    }),
    problems: listProblems(lesson, reading, sorted),
  };
}

/** A slot that another squad's folder may fill: the clips there that look like this squad's, at its station. */
function addStrays(flag: Flag, { aside, flags }: SortedClips, decisions: Decisions): Flag {
  if (flag.code !== 'missing') return flag;
  const strays = aside.filter(({ reading }) => {
    const stray = flags.find(({ code, clip }) => code === 'other-squad' && clip === reading.id);
    const isTheirs = stray?.code === 'other-squad' && stray.likely === flag.squad;
    return isTheirs && getKnownStation(reading, decisions) === flag.station;
  });
  return { ...flag, candidates: [...flag.candidates, ...strays.map(({ reading }) => reading.id)] };
}

/** A clip of another period is a notice: if its squad lacks it, the empty slot asks. */
function raise(flag: Flag, decisions: Decisions): RaisedFlag {
  const key = getFlagKey(flag);
  return { flag, key, answer: decisions.flags.get(key) ?? null, asks: flag.code !== 'outside-period' };
}

interface MatchContext {
  readonly plan: Plan;
  readonly decisions: Decisions;
  readonly observed: ReadonlyMap<ClipId, ObservedClip>;
}

function matchClips({ squad, clips }: SquadClips, context: MatchContext): SquadMatch {
  return matchSquad({
    squad: squad.code,
    route: squad.route,
    retake: context.plan.retake,
    clips: clips.map((clip) => buildPlacedClip(clip, context)),
  });
}

function buildPlacedClip({ reading, time }: RouteClip, { decisions, observed }: MatchContext): PlacedClip {
  const slot = decisions.slotOf.get(reading.id);
  return {
    clip: reading.id,
    startMs: time.startMs,
    uncertaintySeconds: time.uncertaintySeconds,
    hasOrder: time.by !== 'none',
    observation: observed.get(reading.id)?.observation ?? { known: false, scores: {} },
    slotByTeacher: typeof slot === 'number' ? slot : null,
  };
}

interface GradeContext extends MatchContext {
  readonly pupils: OpenLesson['pupils'];
  readonly flags: readonly RaisedFlag[];
}

function gradeSquad(
  { squad, clock, clips }: SquadClips,
  match: SquadMatch,
  { plan, pupils, decisions, flags, observed }: GradeContext,
): GradedSquad {
  const present = countPresent(squad.code, pupils, decisions);
  const graded = clips.flatMap((clip, index): GradedClip[] => {
    const assignment = match.assignments[index];
    if (!assignment) return [];
    const { reading } = clip;
    return [
      {
        ...clip,
        path: getPath(reading, squad.code),
        assignment,
        flags: flags.filter(({ flag }) => flag.clip === reading.id),
        proposals: proposeClip(plan, squad.route, {
          reading,
          assignment,
          observed: observed.get(reading.id),
          lanes: decisions.lanesOf.get(reading.id) ?? null,
          pupils: present,
        }),
      },
    ];
  });
  return { squad, clock, clips: graded, match };
}

/** Where the films were deleted, that alone: whatever else is missing is missing for it. */
function listProblems(
  lesson: OpenLesson,
  reading: ClipsReading,
  sorted: SortedClips,
): readonly ClipsProblem[] {
  const at = findFilmsDeleted({ lesson, ...sorted });
  return at === null ? [...reading.problems, ...findSquadProblems(sorted)] : [{ code: 'films-deleted', at }];
}

function findSquadProblems({ squads }: SortedClips): readonly ClipsProblem[] {
  return squads.flatMap(({ squad, clock, clips }): ClipsProblem[] => {
    if (clips.length === 0) return [{ code: 'squad-without-clips', squad: squad.code }];
    const problems: ClipsProblem[] = [];
    if (clock.from === 'nothing') {
      const { uncertaintySeconds } = clock;
      problems.push({ code: 'clock-unchecked', squad: squad.code, uncertaintySeconds });
    }
    if (clock.contradicting.length > 0) {
      problems.push({ code: 'clock-films-disagree', squad: squad.code, clips: clock.contradicting });
    }
    return problems;
  });
}
