import type { AsideReason } from '../contract/aside-reason.ts';
import { findExportDated } from '../intake/export-dates.ts';
import type { PeriodWindow } from '../intake/periods.ts';
import { getTabletTimes, type LessonTimes, type TabletClip } from '../intake/tablet-times.ts';
import type { Plan, Squad } from '../lesson/plan.ts';
import type { Decisions } from '../marking/decisions.ts';
import { type Flag, getFlagKey } from '../matching/flag.ts';
import type { ClipId } from '../matching/observation.ts';
import { type ClipReading, findCameraNumber, findSeriesNumber, getPath } from './clip-reading.ts';
import { buildOutsideFlag, findClipFlags, findTabletFlag, findUnreadableFlag } from './intake-flags.ts';
import { findSameFootageFlags } from './same-footage.ts';
import { type Owners, settleOwners } from './settle-owners.ts';
import type { ClipAside, RouteClip, SortedClips, SquadClips } from './sorted-clips.ts';

interface Context {
  readonly plan: Plan;
  readonly lesson: LessonTimes;
  readonly decisions: Decisions;
  readonly owners: Owners;
}

/** Gives every clip to a squad, puts each squad's clips in time, and lays aside what is not of this lesson. */
export function sortClips(
  clips: readonly ClipReading[],
  decisions: Decisions,
  { plan, windows }: { readonly plan: Plan; readonly windows: readonly PeriodWindow[] },
): SortedClips {
  const owners = settleOwners(clips, plan, decisions);
  const lesson: LessonTimes = {
    windows,
    period: plan.lesson.period,
    graceSeconds: plan.tolerances.periodGraceMinutes * 60,
    doubtSeconds: plan.tolerances.clockDoubtSeconds,
  };
  const context: Context = { plan, lesson, decisions, owners };
  const squads = plan.squads.map((squad) => {
    const own = clips.filter(({ id }) => owners.squadOf.get(id) === squad.code);
    return sortSquad(squad, own, context);
  });
  const nobodys = clips.filter(({ id }) => owners.squadOf.get(id) === null);
  return {
    squads: squads.map(({ sorted }) => sorted),
    aside: [
      ...squads.flatMap(({ aside }) => aside),
      ...nobodys.map((reading): ClipAside => {
        // Nobody's, but the teacher has said that it is not wanted: it waits no longer.
        const isLeftOut = decisions.slotOf.get(reading.id) === 'none';
        return { reading, squad: null, reason: isLeftOut ? 'by-teacher' : 'nobodys', time: null };
      }),
    ],
    flags: [...owners.flags, ...findSameFootageFlags(clips, owners), ...squads.flatMap(({ flags }) => flags)],
  };
}

/** One tablet's clips whose dates an export wrote over. */
function findExportDatedClips(clips: readonly ClipReading[]): ReadonlySet<ClipId> {
  return findExportDated(
    clips.map(({ id, stamp, facts }) => ({
      id,
      readMs: stamp.source === 'file-time' ? null : stamp.readMs,
      durationSeconds: facts?.durationSeconds ?? null,
    })),
  );
}

interface SortedSquad {
  readonly sorted: SquadClips;
  readonly aside: readonly ClipAside[];
  readonly flags: readonly Flag[];
}

function sortSquad(squad: Squad, clips: readonly ClipReading[], context: Context): SortedSquad {
  const { code } = squad;
  const readable = clips.filter(isReadable);
  const exportDated = findExportDatedClips(readable);
  const times = getTabletTimes(
    readable.map((clip) => buildTabletClip(clip, squad, exportDated)),
    context.lesson,
    context.decisions.clockCorrectionSeconds.get(code) ?? null,
  );
  const timed = times.clips.flatMap((time): RouteClip[] => {
    const reading = readable.find(({ id }) => id === time.id);
    return reading ? [{ reading, time }] : [];
  });
  const originals = new Set(readable.filter(isOriginal).map((clip) => getNumberKey(clip, code)));
  const placed = timed.map((clip) => {
    const isCopy = !isOriginal(clip.reading) && originals.has(getNumberKey(clip.reading, code));
    return { clip, reason: isCopy ? ('edited-copy' as const) : findAsideReason(clip, squad, context) };
  });
  const route = placed.filter(({ reason }) => reason === null).map(({ clip }) => clip);
  const aside = placed.flatMap(({ clip, reason }) =>
    reason === null ? [] : [{ ...clip, squad: code, reason }],
  );
  const unreadable = clips.filter((clip) => !isReadable(clip));
  const window = context.lesson.windows.find((period) => period.code === context.lesson.period) ?? null;
  return {
    sorted: { squad, clock: times.clock, clips: route },
    aside: [
      ...aside,
      ...unreadable.map((reading) => ({ reading, squad: code, reason: 'unreadable' as const, time: null })),
    ],
    flags: [
      ...clips.map((clip) => findUnreadableFlag(clip, code)),
      ...aside.map((clip) => (clip.reason === 'other-period' ? buildOutsideFlag(clip, code) : null)),
      ...route.flatMap((clip) => findClipFlags(clip, code, context.plan)),
      findTabletFlag(code, times, { window, hasClips: route.length > 0 }),
    ].filter((flag) => flag !== null),
  };
}

function isReadable({ facts }: ClipReading): boolean {
  return facts !== null && facts.holds !== 'sound';
}

/** A tablet that edits a clip keeps the original beside the copy, under the same number. */
function isOriginal(clip: ClipReading): boolean {
  return findCameraNumber(clip, null)?.isEdited !== true;
}

function getNumberKey(clip: ClipReading, squad: string): string {
  const number = findCameraNumber(clip, squad);
  return number ? `${number.folder}/${number.series}${number.value}` : clip.id;
}

function buildTabletClip(clip: ClipReading, squad: Squad, exportDated: ReadonlySet<ClipId>): TabletClip {
  return {
    id: clip.id,
    name: getPath(clip, squad.code),
    number: findSeriesNumber(clip, squad.code),
    stamp: clip.stamp,
    exportDated: exportDated.has(clip.id),
    clockSeen: clip.card?.clock ?? null,
    showsLesson: clip.card !== null && clip.card.station !== null,
  };
}

/** The teacher's word first; then what a clip shows; then whose it looks like; then when it was filmed. */
function findAsideReason(clip: RouteClip, squad: Squad, context: Context): AsideReason | null {
  const { reading, time } = clip;
  const { decisions, owners, lesson } = context;
  const slot = decisions.slotOf.get(reading.id);
  if (slot !== undefined) return slot === 'none' ? 'by-teacher' : null;
  if (reading.card?.clock && !reading.card.station) return 'clock-film';
  if (owners.waiting.has(reading.id)) return 'other-squad';
  if (time.period === lesson.period) return null;
  const answer = decisions.flags.get(getFlagKey(buildOutsideFlag(clip, squad.code)));
  return answer?.settled === 'cleared' ? null : 'other-period';
}
