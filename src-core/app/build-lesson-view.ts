import type { LessonId } from '../contract/desk-view.ts';
import type { ClipView, JournalView, LessonView, ReadingView, SeenView } from '../contract/lesson-view.ts';
import type { Problem } from '../contract/problem.ts';
import type { Squad } from '../lesson/plan.ts';
import { findClipPoints } from '../marking/find-clip-points.ts';
import type { JournalDecision, JournalEvent, JournalEventId } from '../marking/journal-event.ts';
import type { JournalState } from '../marking/replay.ts';
import type { SlotScore } from '../marking/squad-score.ts';
import type { ClipId } from '../matching/observation.ts';
import { findShownMovement, findShownUnison, type UnisonPlace } from './clip-evidence.ts';
import { type ClipReading, getPath } from './clip-reading.ts';
import type { GradedClip, GradedLesson } from './graded-lesson.ts';
import type { ClipAside } from './sorted-clips.ts';

/** What a view holds beside the graded lesson. */
export interface ViewFrame {
  readonly lesson: LessonId;
  readonly revision: number;
  readonly path: string;
  readonly clipsPath: string;
  readonly isDemo: boolean;
  readonly second?: NonNullable<LessonView['second']>;
  readonly planVersion: string;
  /** What was odd when the lesson was opened. */
  readonly problems: readonly Problem[];
  readonly reading: ReadingView;
  /** Of the journal, in its own order. */
  readonly events: readonly JournalEvent[];
}

/** A graded lesson as plain data for a face. */
export function buildLessonView(graded: GradedLesson, frame: ViewFrame): LessonView {
  const { lesson, squads, aside, flags, score, problems } = graded;
  const { events, ...known } = frame;
  const rest: Rest = {
    graded,
    slots: new Map(
      score.squads.flatMap((squad) =>
        squad.slots.flatMap((slot) => (slot.clip ? [[slot.clip.clip, slot]] : [])),
      ),
    ),
    isSearching: frame.reading.state !== 'read',
  };
  return {
    ...known,
    plan: lesson.plan,
    pupils: lesson.pupils,
    unshown: lesson.unshown,
    squads: squads.map(({ squad, clock, match }) => ({
      code: squad.code,
      clock,
      missing: match.missing,
      order: match.order,
    })),
    clips: [
      ...squads.flatMap(({ squad, clips }) =>
        clips.map((clip, position) => buildRouteClip(clip, { squad, position }, rest)),
      ),
      ...aside.map((clip) => buildAsideClip(clip, rest)),
    ],
    flags: flags.map(({ key, flag, answer, asks }) => ({ key, flag, answer, asks })),
    squadScores: score.squads,
    pupilScores: score.pupils,
    problems: [...known.problems, ...problems],
    journal: buildJournalView(lesson.journal, events),
  };
}

interface Rest {
  readonly graded: GradedLesson;
  /** The slots that clips count for, by clip. */
  readonly slots: ReadonlyMap<ClipId, SlotScore>;
  readonly isSearching: boolean;
}

function buildRouteClip(
  clip: GradedClip,
  { squad, position }: { readonly squad: Squad; readonly position: number },
  rest: Rest,
): ClipView {
  const { reading, time, assignment, proposals, flags, path } = clip;
  const station = assignment.slot === null ? null : (squad.route[assignment.slot] ?? null);
  return {
    ...describeReading(reading, rest),
    seen: describeSeen(reading, { station }, rest),
    squad: squad.code,
    aside: null,
    position,
    path,
    time,
    assignment,
    proposals,
    flags: flags.map(({ key }) => key),
    criteria: rest.slots.get(reading.id)?.clip?.criteria ?? null,
    points: findClipPoints(rest.graded.score, reading.id),
  };
}

function buildAsideClip({ reading, squad, reason, time }: ClipAside, rest: Rest): ClipView {
  return {
    ...describeReading(reading, rest),
    seen: describeSeen(reading, null, rest),
    squad,
    aside: reason,
    position: null,
    path: getPath(reading, squad),
    time,
    assignment: null,
    proposals: [],
    flags: rest.graded.flags.filter(({ flag }) => flag.clip === reading.id).map(({ key }) => key),
    criteria: null,
    points: null,
  };
}

type ReadingPart = Pick<
  ClipView,
  | 'id'
  | 'copies'
  | 'holds'
  | 'container'
  | 'codec'
  | 'durationSeconds'
  | 'stamp'
  | 'card'
  | 'showsClock'
  | 'isSearched'
  | 'word'
  | 'note'
>;

function describeReading(reading: ClipReading, { graded, isSearching }: Rest): ReadingPart {
  const { id, copies, facts, stamp, card, lookProblems } = reading;
  const { decisions } = graded.lesson.journal;
  return {
    id,
    copies: copies.map(({ file, squad }) => ({ path: file.path, squad, sizeBytes: file.sizeBytes })),
    holds: facts?.holds ?? null,
    container: facts?.container ?? null,
    codec: facts?.codec ?? null,
    durationSeconds: facts?.durationSeconds ?? null,
    stamp,
    card: card?.station ?? null,
    showsClock: (card?.clock ?? null) !== null,
    isSearched: !isSearching || card !== null || lookProblems.length > 0,
    word: {
      station: decisions.stationOf.get(id) ?? null,
      squad: decisions.squadOf.get(id) ?? null,
      slot: decisions.slotOf.get(id) ?? null,
      lanes: decisions.lanesOf.get(id) ?? null,
    },
    note: decisions.notes.get(id) ?? null,
  };
}

/** @param place null: set aside, so that its movement is not read */
function describeSeen(
  { id, evidence }: ClipReading,
  place: Pick<UnisonPlace, 'station'> | null,
  { graded: { lesson } }: Rest,
): SeenView {
  const { print } = evidence;
  const isEmpty = print !== null && print.seconds.length === 0;
  const lanes = lesson.journal.decisions.lanesOf.get(id) ?? null;
  const reps = place && (findShownMovement(evidence, lesson.plan, place.station)?.reps ?? null);
  const unison = place && findShownUnison(evidence, lesson.plan, { ...place, lanes });
  return {
    watched: print === null ? 'no' : isEmpty ? 'in-vain' : 'yes',
    reps: reps && {
      count: reps.count,
      confidence: reps.confidence,
      firstSeconds: reps.spanSeconds?.[0] ?? null,
    },
    unison: unison?.score ?? null,
    lanes,
    isMeasuring: unison === undefined,
  };
}

function buildJournalView(state: JournalState, events: readonly JournalEvent[]): JournalView {
  const { undoTarget, redoTarget, lastAt, decisions } = state;
  return {
    undoTarget,
    undoes: findDecision(events, undoTarget),
    redoTarget,
    redoes: findDecision(events, redoTarget),
    lastAt,
    handedIn: decisions.handedIn,
  };
}

function findDecision(events: readonly JournalEvent[], id: JournalEventId | null): JournalDecision | null {
  const what = id === null ? undefined : events.findLast((event) => event.id === id)?.what;
  if (!what || what.kind === 'undone' || what.kind === 'redone' || what.kind === 'handed-in') return null;
  return what;
}
