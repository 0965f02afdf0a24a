import type { ClipsProblem } from '../contract/clips-problem.ts';
import { getPeriodWindows } from '../intake/period-windows.ts';
import type { Plan } from '../lesson/plan.ts';
import type { Decisions } from '../marking/decisions.ts';
import { scoreLesson } from '../marking/points.ts';
import type { Proposal } from '../marking/proposal.ts';
import { proposePlace } from '../marking/propose-place.ts';
import type { SlotResult, SquadResult } from '../marking/score-input.ts';
import type { ClipAssignment } from '../matching/assignment.ts';
import { type Flag, getFlagKey } from '../matching/flag.ts';
import { matchSquad, type SquadMatch } from '../matching/match-squad.ts';
import type { PlacedClip } from '../matching/observation.ts';
import { type ClipReading, getPath } from './clip-reading.ts';
import type { GradedClip, GradedLesson, GradedSquad, RaisedFlag } from './graded-lesson.ts';
import type { OpenLesson } from './open-lesson.ts';
import type { Job, LessonPorts } from './ports.ts';
import { type ClipsReading, readClips } from './read-clips.ts';
import { getKnownStation } from './settle-owners.ts';
import { sortClips } from './sort-clips.ts';
import type { RouteClip, SortedClips, SquadClips } from './sorted-clips.ts';

/** From a folder of clips to proposals: reads, sorts, matches, flags, proposes, adds up. Nothing is written. */
export async function gradeLesson(ports: LessonPorts, lesson: OpenLesson, job: Job): Promise<GradedLesson> {
  return gradeClips(lesson, await readClips(ports, lesson.plan, job));
}

/** The same from clips that were read already; pure, and quick enough to run after every decision. */
export function gradeClips(lesson: OpenLesson, reading: ClipsReading): GradedLesson {
  const { plan, pupils, journal } = lesson;
  const { decisions } = journal;
  const sorted = sortClips(reading.clips, decisions, { plan, windows: getPeriodWindows(plan) });
  const matches = sorted.squads.map((own) => ({ own, match: matchClips(own, plan, decisions) }));
  const matchFlags = matches.flatMap(({ match }) => match.flags);
  const flags = [...sorted.flags, ...matchFlags.map((flag) => addStrays(flag, sorted, decisions))].map(
    (flag) => raise(flag, decisions),
  );
  const squads = matches.map(({ own, match }) => gradeSquad(own, match, { plan, flags }));
  const proposals = new Map(
    squads.flatMap(({ clips }) => clips.map((clip) => [clip.reading.id, clip.proposals])),
  );
  const asking = flags.filter(({ asks }) => asks);
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
      squads: squads.map(buildSquadResult),
      flags: asking.map(({ flag, key }) => ({
        key,
        squad: flag.squad,
        clip: flag.clip,
        slot: 'slot' in flag ? flag.slot : null,
      })),
    }),
    problems: [...reading.problems, ...findSquadProblems(sorted)],
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

function matchClips({ squad, clips }: SquadClips, plan: Plan, decisions: Decisions): SquadMatch {
  return matchSquad({
    squad: squad.code,
    route: squad.route,
    retake: plan.retake,
    clips: clips.map((clip) => buildPlacedClip(clip, decisions)),
  });
}

function buildPlacedClip({ reading, time }: RouteClip, decisions: Decisions): PlacedClip {
  const station = getKnownStation(reading, decisions);
  const slot = decisions.slotOf.get(reading.id);
  return {
    clip: reading.id,
    startMs: time.startMs,
    uncertaintySeconds: time.uncertaintySeconds,
    hasOrder: time.by !== 'none',
    observation:
      station === null
        ? { known: false, scores: {} }
        : { known: true, station, from: decisions.stationOf.has(reading.id) ? 'teacher' : 'card' },
    slotByTeacher: typeof slot === 'number' ? slot : null,
  };
}

function gradeSquad(
  { squad, clock, clips }: SquadClips,
  match: SquadMatch,
  { plan, flags }: { readonly plan: Plan; readonly flags: readonly RaisedFlag[] },
): GradedSquad {
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
        proposals: propose(plan, squad.route, { reading, assignment }),
      },
    ];
  });
  return { squad, clock, clips: graded, match };
}

/** What the machine suggests for a clip's criteria; a criterion it knows nothing of is left to the teacher. */
function propose(
  plan: Plan,
  route: readonly string[],
  { reading, assignment }: { readonly reading: ClipReading; readonly assignment: ClipAssignment },
): readonly Proposal[] {
  const expected = assignment.slot === null ? null : (route[assignment.slot] ?? null);
  const place = proposePlace(assignment, expected, reading.card?.station?.firstSeenSeconds ?? null);
  if (!place) return [];
  return plan.rubric.clip
    .filter(({ checks }) => checks === 'place')
    .map(({ code }) => ({ criterion: code, ...place }));
}

function buildSquadResult({ squad, clips }: GradedSquad): SquadResult {
  const slots = squad.route.map((station, slot): SlotResult => {
    const position = clips.findIndex(({ assignment }) => fillsSlot(assignment, slot));
    const clip = clips[position];
    if (!clip) return { slot, station, clip: null, startMs: null, position: null, orderFlag: null };
    const hasOrder = clip.time.by !== 'none' && clip.assignment.role === 'counts';
    return {
      slot,
      station,
      clip: clip.reading.id,
      startMs: clip.time.startMs,
      position: hasOrder ? position : null,
      orderFlag: clip.flags.find(({ flag }) => flag.code === 'out-of-order')?.key ?? null,
    };
  });
  return { squad: squad.code, slots };
}

function fillsSlot({ slot, role }: ClipAssignment, wanted: number): boolean {
  return slot === wanted && (role === 'counts' || role === 'wrong-place');
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
