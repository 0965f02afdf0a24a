import type { ClipsProblem } from '../contract/clips-problem.ts';
import { voteCards } from '../evidence/card-vote.ts';
import { isLasting } from '../evidence/evidence-problem.ts';
import { assignSquad } from '../intake/assign-squad.ts';
import { chooseStamp } from '../intake/choose-stamp.ts';
import { getFileRole } from '../intake/found-file.ts';
import type { Plan } from '../lesson/plan.ts';
import { groupBy } from '../platform/group-by.ts';
import type { EpochMs } from '../platform/units.ts';
import { NO_EVIDENCE } from './clip-evidence.ts';
import { type ClipReading, getPath, type HeldFile } from './clip-reading.ts';
import { type CopyGroup, groupCopies, type ReadFile } from './group-copies.ts';
import type { FolderListing, Job, LessonPorts } from './ports.ts';

/** Everything found in the folder of clips, read once. */
export interface ClipsReading {
  /** In natural order of path. */
  readonly clips: readonly ClipReading[];
  readonly problems: readonly ClipsProblem[];
}

/** How far from noon of the lesson's day a clip may be dated and still be searched for cards. */
const CARD_SEARCH_MS = 36 * 3_600_000;

/**
 * Reads the folder of clips: whose folder each file lies in, what its container says, which files are copies of
 * one recording, which codes it shows. A file that cannot be read is named and the others are read all the same.
 */
export async function readClips(ports: LessonPorts, plan: Plan, job: Job): Promise<ClipsReading> {
  const listing = await ports.listClips();
  const { held, problems } = sortFiles(listing, plan);
  const files = await readFiles(ports, held, job);
  const unread = held.filter(({ file }) => !files.some((read) => read.held.file === file));
  const groups = await groupCopies(files, ports.readFullHash);
  const dated = groups.map((group) => buildReading(group, plan, ports.nowMs()));
  job.onClips?.(() => dated);
  const clips = await readAllCards(ports, dated, { plan, job });
  return {
    clips,
    problems: [
      ...listing.problems,
      ...problems,
      ...unread.map(({ file }): ClipsProblem => ({ code: 'file-unreadable', path: file.path })),
      ...clips.flatMap(findCopiesWithinSquad),
      ...clips.flatMap(findOddStamps),
      ...clips.flatMap(findOddCards),
      ...findUnsearched(clips),
    ],
  };
}

function sortFiles(listing: FolderListing, plan: Plan): { held: HeldFile[]; problems: ClipsProblem[] } {
  const held: HeldFile[] = [];
  const problems: ClipsProblem[] = [];
  for (const file of listing.files) {
    const role = getFileRole(file.name);
    if (role === 'other') problems.push({ code: 'file-not-a-clip', path: file.path });
    if (role !== 'clip') continue;
    const owner = assignSquad(file.path, listing.name, plan.squads);
    if (owner.squad !== null) held.push({ file, squad: owner.squad });
    else problems.push({ code: 'clip-of-nobody', path: file.path, reason: owner.reason });
  }
  return { held, problems };
}

async function readFiles(
  ports: LessonPorts,
  held: readonly HeldFile[],
  job: Job,
): Promise<readonly ReadFile[]> {
  let done = 0;
  const files = await ports.mapAll(held, async (one): Promise<ReadFile | null> => {
    job.signal.throwIfAborted();
    const reading = await ports.readFile(one.file.path);
    done += 1;
    job.onProgress({ step: 'read', done, total: held.length });
    return reading && { held: one, reading };
  });
  job.signal.throwIfAborted();
  return files.filter((file) => file !== null);
}

function buildReading({ id, copies, reading }: CopyGroup, plan: Plan, nowMs: EpochMs): ClipReading {
  const file = copies[0]?.file;
  const facts = reading.media.ok ? reading.media.value : null;
  const stamp = chooseStamp({
    facts,
    fileName: file?.name ?? '',
    fileModifiedMs: file?.modifiedMs ?? null,
    zone: plan.zone,
    nowMs,
  });
  return {
    id,
    copies,
    facts,
    mediaProblems: reading.media.problems,
    stamp,
    card: null,
    lookProblems: [],
    evidence: NO_EVIDENCE,
  };
}

async function readAllCards(
  ports: LessonPorts,
  clips: readonly ClipReading[],
  { plan, job }: { plan: Plan; job: Job },
): Promise<readonly ClipReading[]> {
  const noonMs = Date.parse(`${plan.lesson.date}T12:00:00Z`);
  const wanted = clips.filter(
    ({ facts, stamp }) =>
      facts !== null &&
      facts.holds !== 'sound' &&
      (stamp.startMs === null || stamp.trust === 'weak' || Math.abs(stamp.startMs - noonMs) < CARD_SEARCH_MS),
  );
  // A tablet whose clock is off by days is searched whole: a film of the class clock may be all that dates it.
  const squadsOfTheDay = new Set(wanted.flatMap(({ copies }) => copies.map(({ squad }) => squad)));
  const isLost = (clip: ClipReading) =>
    clip.facts !== null && clip.copies.every(({ squad }) => !squadsOfTheDay.has(squad));
  const search = [...wanted, ...clips.filter(isLost)];
  const looks = new Map<string, Pick<ClipReading, 'card' | 'lookProblems' | 'evidence'>>();
  const merge = () => clips.map((clip) => ({ ...clip, ...looks.get(clip.id) }));
  let done = 0;
  await ports.mapAll(search, async (clip) => {
    job.signal.throwIfAborted();
    const { readings, look, problems } = await ports.lookAt(
      getPath(clip, null),
      clip.id,
      clip.facts?.durationSeconds ?? null,
    );
    const card = voteCards(readings, plan);
    looks.set(clip.id, { card, lookProblems: problems, evidence: { ...NO_EVIDENCE, look } });
    job.onClips?.(merge);
    done += 1;
    job.onProgress({ step: 'cards', done, total: search.length });
  });
  // A search that was stopped midway has found less than there is.
  job.signal.throwIfAborted();
  return merge();
}

function findCopiesWithinSquad({ copies }: ClipReading): ClipsProblem[] {
  return [...groupBy(copies, ({ squad }) => squad)].flatMap(([squad, same]): ClipsProblem[] =>
    same.length > 1 ? [{ code: 'same-clip-twice', squad, paths: same.map(({ file }) => file.path) }] : [],
  );
}

function findOddStamps(clip: ClipReading): ClipsProblem[] {
  return clip.stamp.problems.map((problem) => ({ code: 'stamp-odd', path: getPath(clip, null), problem }));
}

function findOddCards(clip: ClipReading): ClipsProblem[] {
  const path = getPath(clip, null);
  return [
    ...(clip.card?.foreign ?? []).map(
      ({ text, kind }): ClipsProblem => ({ code: 'card-foreign', path, text, kind }),
    ),
    ...(clip.card?.problems ?? []).map((problem): ClipsProblem => ({ code: 'card-odd', path, problem })),
  ];
}

/** Each reason why cards were not looked for, once; a clip that cannot be decoded has a flag of its own. */
function findUnsearched(clips: readonly ClipReading[]): ClipsProblem[] {
  const failures = clips.flatMap((clip) =>
    clip.lookProblems
      .filter((problem) => !isLasting(problem))
      .map((problem) => ({ problem, path: getPath(clip, null) })),
  );
  return [...groupBy(failures, ({ problem }) => problem.code).values()].flatMap((same): ClipsProblem[] => {
    const [first] = same;
    if (!first) return [];
    return [{ code: 'cards-not-searched', paths: same.map(({ path }) => path), problem: first.problem }];
  });
}
