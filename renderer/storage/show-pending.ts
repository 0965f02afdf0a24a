import { isSame } from '../../src-core/contract/lesson-update.ts';
import type { ClipView, JournalView, LessonView } from '../../src-core/contract/lesson-view.ts';
import type { SquadCode } from '../../src-core/lesson/plan.ts';
import { type Decisions, foldDecisions } from '../../src-core/marking/decisions.ts';
import { fillSlots, listFlagRefs } from '../../src-core/marking/fill-slots.ts';
import { findClipPoints } from '../../src-core/marking/find-clip-points.ts';
import type { JournalDecision } from '../../src-core/marking/journal-event.ts';
import { scoreLesson } from '../../src-core/marking/points.ts';
import type { ScoreInput, SquadResult } from '../../src-core/marking/score-input.ts';
import { narrowToTouched, putBack } from './narrow-to-touched.ts';
import type { OutboxEntry } from './outbox-entry.ts';
import { foldPending } from './pending-trail.ts';
import { restateDecisions } from './restate-decisions.ts';

/**
 * A lesson as it will be once the host has recorded what waits: marks, notes, flags and sums by the same functions as
 * the host's. Where clips belong stays as it is until the host has matched them anew; the teacher's word is shown.
 */
export function showPending(view: LessonView, entries: readonly OutboxEntry[]): LessonView {
  if (entries.length === 0) return view;
  const { decisions: pending, reachesBack, undone } = foldPending(entries);
  const acts = pending.map(({ decision }) => decision);
  const latest = pending.at(-1);
  const journal: JournalView = {
    ...view.journal,
    ...(latest && { undoTarget: latest.id, undoes: latest.decision }),
    ...(undone.length > 0 || reachesBack ? {} : acts.length > 0 && { redoTarget: null, redoes: null }),
    ...describeUndone(undone.at(-1)),
  };
  if (acts.length === 0) return { ...view, journal };
  const touched = narrowToTouched(view, acts);
  const decisions = foldDecisions([...restateDecisions(touched), ...acts], view.journal.handedIn);
  return { ...putBack(view, applyDecisions(touched, decisions, acts)), journal };
}

function describeUndone(
  latest: { readonly id: string; readonly decision: JournalDecision } | undefined,
): Partial<JournalView> {
  return latest ? { redoTarget: latest.id, redoes: latest.decision } : {};
}

function applyDecisions(
  view: LessonView,
  decisions: Decisions,
  acts: readonly JournalDecision[],
): LessonView {
  const flags = view.flags.map((flag) => {
    const answer = decisions.flags.get(flag.key) ?? null;
    return answer === flag.answer ? flag : { ...flag, answer };
  });
  // Before the clips are read there is nothing to add up.
  const isScored = view.squadScores.length > 0;
  const score = isScored ? scoreLesson(buildScoreInput(view, decisions)) : null;
  const slots = new Map(
    (score?.squads ?? []).flatMap(({ slots: own }) =>
      own.flatMap(({ clip }) => (clip ? [[clip.clip, clip.criteria] as const] : [])),
    ),
  );
  const clips = view.clips.map((clip) =>
    changeClip(clip, {
      note: decisions.notes.get(clip.id) ?? null,
      word: findWord(clip, acts),
      criteria: slots.get(clip.id) ?? clip.criteria,
      points: score ? findClipPoints(score, clip.id) : clip.points,
    }),
  );
  return score
    ? { ...view, flags, clips, squadScores: score.squads, pupilScores: score.pupils }
    : { ...view, flags, clips };
}

/** The very same clip where nothing differs: of three hundred one has changed, and the others are not looked into again. */
function changeClip(
  clip: ClipView,
  change: Pick<ClipView, 'note' | 'word' | 'criteria' | 'points'>,
): ClipView {
  const { note, word, criteria, points } = clip;
  return isSame({ note, word, criteria, points }, change) ? clip : { ...clip, ...change };
}

function findWord(clip: ClipView, acts: readonly JournalDecision[]): ClipView['word'] {
  const parts = acts.filter((act) => 'clip' in act && act.clip === clip.id).map(getWordPart);
  return Object.assign({}, clip.word, ...parts);
}

function getWordPart(act: JournalDecision): Partial<ClipView['word']> {
  switch (act.kind) {
    case 'station-set':
      return { station: act.station };
    case 'clip-moved':
      return { squad: act.squad };
    case 'clip-placed':
      return { slot: act.slot };
    case 'lanes-set':
      return { lanes: act.lanes };
    default:
      return {};
  }
}

/** What the marks of a view depend on, with other decisions than it shows. */
function buildScoreInput(view: LessonView, decisions: Decisions): ScoreInput {
  return {
    plan: view.plan,
    pupils: view.pupils,
    decisions,
    proposals: new Map(view.clips.map(({ id, proposals }) => [id, proposals])),
    squads: view.squadScores.flatMap(({ squad }) => buildSquadResult(view, squad)),
    flags: listFlagRefs(view.flags),
  };
}

function buildSquadResult(view: LessonView, code: SquadCode): readonly SquadResult[] {
  const walked = view.clips.flatMap(({ squad, aside, assignment, time }) =>
    squad === code && aside === null && assignment !== null && time !== null ? [{ assignment, time }] : [],
  );
  return view.plan.squads
    .filter((squad) => squad.code === code)
    .map((squad) => fillSlots(squad, walked, view.flags));
}
