import { describeFlag } from '../../renderer/text/english/flags.ts';
import { explainProposal } from '../../renderer/text/english/proposals.ts';
import type { Names } from '../../renderer/text/names.ts';
import { findClipPoints } from '../app/grade-lesson.ts';
import type { GradedClip, GradedLesson, GradedSquad, RaisedFlag } from '../app/graded-lesson.ts';
import type { ClipAside } from '../app/sorted-clips.ts';
import type { Problem } from '../contract/problem.ts';
import { toJsonProblem } from './say.ts';

/**
 * A graded lesson as `grade --json` prints it. Slots count from 1, instants are ISO 8601 in UTC, files lie below
 * the folder of clips, an uncertainty of null is unbounded.
 */
export function buildGradeJson(graded: GradedLesson, problems: readonly Problem[], names: Names): object {
  const { plan } = graded.lesson;
  return {
    lesson: plan.lesson,
    orderRule: plan.orderRule,
    squads: graded.squads.map((squad) => buildSquad(graded, squad, names)),
    setAside: graded.aside.map((aside) => buildAside(aside, graded.flags, names)),
    flags: graded.flags.map((flag) => buildFlag(flag, names)),
    pupils: graded.score.pupils.map(({ pupil, state, sum, percent, scale, attendance }) => ({
      id: pupil.id,
      squad: pupil.squad,
      attendance: attendance.attendance,
      state,
      points: sum?.points ?? null,
      max: sum?.max ?? null,
      percent,
      scale,
    })),
    problems: problems.map((problem) => toJsonProblem(problem, names)),
  };
}

function buildSquad(graded: GradedLesson, { squad, clock, clips, match }: GradedSquad, names: Names): object {
  const score = graded.score.squads.find((one) => one.squad === squad.code);
  const byRule = Object.entries(score?.byRule ?? {}).map(([rule, sum]) => [rule, sum.points]);
  return {
    code: squad.code,
    name: squad.name,
    route: squad.route,
    clock: {
      offsetSeconds: clock.offsetSeconds,
      uncertaintySeconds: clock.uncertaintySeconds,
      from: clock.from,
    },
    clips: clips.map((clip) => buildClip(graded, clip, names)),
    missing: match.missing.map((slot) => ({ slot: slot + 1, station: squad.route[slot] })),
    order: {
      kendallTau: match.order.kendallTau.distance,
      kendallTauMax: match.order.kendallTau.max,
      shareInOrder: match.order.shareInOrder,
    },
    points: Object.fromEntries(byRule),
    maxPoints: score?.sum.max ?? 0,
    flags: graded.flags
      .filter(({ flag }) => flag.squad === squad.code && flag.clip === null)
      .map((flag) => buildFlag(flag, names)),
  };
}

function buildClip(graded: GradedLesson, clip: GradedClip, names: Names): object {
  const { assignment, time, reading } = clip;
  return {
    id: reading.id,
    file: clip.path,
    start: formatInstant(time.startMs),
    uncertaintySeconds: formatBound(time.uncertaintySeconds),
    orderedBy: time.by,
    durationSeconds: reading.facts?.durationSeconds ?? null,
    station: assignment.station,
    stationFrom: assignment.stationFrom,
    slot: assignment.slot === null ? null : assignment.slot + 1,
    role: assignment.role,
    performers: graded.lesson.journal.decisions.lanesOf.get(reading.id) ?? null,
    flags: clip.flags.map((flag) => buildFlag(flag, names)),
    proposals: clip.proposals.map(({ criterion, met, confidence, reason }) => ({
      criterion,
      met,
      confidence,
      reason: { ...reason, text: explainProposal(reason, names) },
    })),
    criteria: findMarks(graded, reading.id),
    points: findClipPoints(graded.score, reading.id),
  };
}

function findMarks(graded: GradedLesson, clip: string): object[] {
  const score = graded.score.squads
    .flatMap(({ slots }) => slots)
    .find((slot) => slot.clip?.clip === clip)?.clip;
  return (score?.criteria ?? []).map(({ criterion, shown, confirmed }) => ({
    criterion,
    met: shown,
    confirmed,
  }));
}

function buildAside(
  { reading, squad, reason, time }: ClipAside,
  flags: readonly RaisedFlag[],
  names: Names,
): object {
  return {
    id: reading.id,
    files: reading.copies.map(({ file }) => file.path),
    squad,
    reason,
    start: formatInstant(time?.startMs ?? null),
    period: time?.period ?? null,
    flags: flags.filter(({ flag }) => flag.clip === reading.id).map((flag) => buildFlag(flag, names)),
  };
}

function buildFlag({ flag, key, answer, asks }: RaisedFlag, names: Names): object {
  const slot = 'slot' in flag ? { slot: flag.slot + 1 } : {};
  const against = 'against' in flag ? { against: { ...flag.against, slot: flag.against.slot + 1 } } : {};
  const either = 'either' in flag ? { either: flag.either.map(countFromOne) } : {};
  const bound =
    'uncertaintySeconds' in flag ? { uncertaintySeconds: formatBound(flag.uncertaintySeconds) } : {};
  return {
    ...flag,
    ...slot,
    ...against,
    ...either,
    ...bound,
    file: flag.clip === null ? null : names.clip(flag.clip),
    key,
    settled: answer?.settled ?? null,
    open: asks && answer === null,
    text: describeFlag(flag, names),
  };
}

function countFromOne<Choice extends { readonly slot: number | null }>(choice: Choice): Choice {
  return { ...choice, slot: choice.slot === null ? null : choice.slot + 1 };
}

function formatBound(seconds: number): number | null {
  return Number.isFinite(seconds) ? seconds : null;
}

function formatInstant(ms: number | null): string | null {
  return ms === null ? null : new Date(ms).toISOString();
}
