import type { ClipsProblem } from '../contract/clips-problem.ts';
import type { Problem } from '../contract/problem.ts';
import { assignSquad } from '../intake/assign-squad.ts';
import { type FoundFile, getFileRole } from '../intake/found-file.ts';
import type { Plan, SquadCode } from '../lesson/plan.ts';
import { groupBy } from '../platform/group-by.ts';
import type { Outcome } from '../platform/outcome.ts';
import type { StorageProblem } from '../platform/storage-problem.ts';
import type { FolderListing, Job } from './ports.ts';
import { buildShelf, type Shelf } from './shelf.ts';

/** A folder to bring clips from: a squad's, a folder of squads' folders, a whole tablet. */
export interface ClipSource {
  /** As the teacher named it. */
  readonly folder: string;
  readonly listing: FolderListing;
}

/** What bringing clips needs of the disk. Lesson paths lie below the lesson's folder of clips. */
export interface BringPorts {
  readonly hashSource: (source: ClipSource, file: FoundFile) => Promise<string>;
  readonly hashClip: (path: string) => Promise<string>;
  /** Copies and compares; an existing file is never replaced. */
  readonly copy: (
    source: ClipSource,
    file: FoundFile,
    toPath: string,
  ) => Promise<Outcome<null, StorageProblem>>;
  /** Bytes free where the lesson lies; null where the system does not tell. */
  readonly freeBytes: () => Promise<number | null>;
}

/** What became of the files. */
export interface BroughtClips {
  /** Paths below the lesson's folder of clips, in the order copied. */
  readonly copied: readonly string[];
  /** Files whose content the same squad had already. */
  readonly alreadyThere: number;
  readonly problems: readonly Problem[];
}

interface Arrival {
  readonly source: ClipSource;
  readonly file: FoundFile;
  readonly squad: SquadCode;
}

/**
 * Copies clips into the lesson, a folder per squad, each compared after copying. What a squad has already is
 * passed over by content, so bringing the same tablet twice changes nothing. Stops at the first copy that fails;
 * what was copied before stays and is passed over next time. Nothing is changed where the clips come from.
 */
export async function bringClips(
  sources: readonly ClipSource[],
  present: FolderListing,
  context: { readonly plan: Plan; readonly ports: BringPorts; readonly job: Job },
): Promise<BroughtClips> {
  const { plan, ports } = context;
  const sorted = sources.map((source) => sortSource(source, plan));
  const arrivals = sorted.flatMap((one) => one.arrivals);
  const shelf = buildShelf(present, plan);
  const fresh = await selectFresh(arrivals, shelf, ports);
  const problems: Problem[] = [
    ...sources.flatMap(({ listing }) => listing.problems),
    ...sorted.flatMap((one) => one.problems),
  ];
  const alreadyThere = arrivals.length - fresh.length;
  const neededBytes = fresh.reduce((sum, { file }) => sum + file.sizeBytes, 0);
  const freeBytes = await ports.freeBytes();
  if (freeBytes !== null && neededBytes > freeBytes) {
    const tooSmall: Problem = { code: 'disk-too-small', neededBytes, freeBytes };
    return { copied: [], alreadyThere, problems: [...problems, tooSmall] };
  }
  const { copied, failure } = await copyAll(fresh, shelf, context);
  return { copied, alreadyThere, problems: failure ? [...problems, failure] : problems };
}

function sortSource(source: ClipSource, plan: Plan): { arrivals: Arrival[]; problems: ClipsProblem[] } {
  const arrivals: Arrival[] = [];
  const problems: ClipsProblem[] = [];
  for (const file of source.listing.files) {
    const role = getFileRole(file.name);
    const path = `${source.folder}/${file.path}`;
    if (role === 'other') problems.push({ code: 'file-not-a-clip', path });
    if (role !== 'clip') continue;
    const owner = assignSquad(file.path, source.listing.name, plan.squads);
    if (owner.squad === null) problems.push({ code: 'clip-of-nobody', path, reason: owner.reason });
    else arrivals.push({ source, file, squad: owner.squad });
  }
  return { arrivals, problems };
}

/** The arrivals whose content their squad has not got, each content once. */
async function selectFresh(
  arrivals: readonly Arrival[],
  shelf: Shelf,
  ports: BringPorts,
): Promise<readonly Arrival[]> {
  const fresh: Arrival[] = [];
  const alike = groupBy(arrivals, ({ squad, file }) => `${squad} ${file.sizeBytes}`).values();
  for (const group of alike) fresh.push(...(await selectUnknown(group, shelf, ports)));
  return fresh;
}

/** Of one squad's arrivals of one size, those whose content is new; without rivals nothing needs comparing. */
async function selectUnknown(
  group: readonly Arrival[],
  shelf: Shelf,
  ports: BringPorts,
): Promise<readonly Arrival[]> {
  const rivals = group.slice(0, 1).flatMap(({ squad, file }) => {
    const present = shelf.clipsOf.get(squad) ?? [];
    return present.filter(({ sizeBytes }) => sizeBytes === file.sizeBytes);
  });
  if (group.length === 1 && rivals.length === 0) return group;
  const known = new Set(await Promise.all(rivals.map(({ path }) => ports.hashClip(path))));
  const fresh: Arrival[] = [];
  for (const arrival of group) {
    const hash = await ports.hashSource(arrival.source, arrival.file);
    if (!known.has(hash)) fresh.push(arrival);
    known.add(hash);
  }
  return fresh;
}

async function copyAll(
  fresh: readonly Arrival[],
  shelf: Shelf,
  { ports, job }: { readonly ports: BringPorts; readonly job: Job },
): Promise<{ copied: string[]; failure: Problem | null }> {
  const copied: string[] = [];
  const totalBytes = fresh.reduce((sum, { file }) => sum + file.sizeBytes, 0);
  let doneBytes = 0;
  for (const { source, file, squad } of fresh) {
    job.signal.throwIfAborted();
    const toPath = shelf.takePlace(squad, file.name);
    const copy = await ports.copy(source, file, toPath);
    if (!copy.ok) return { copied, failure: copy.problems[0] ?? null };
    copied.push(toPath);
    doneBytes += file.sizeBytes;
    job.onProgress({ step: 'copy', done: copied.length, total: fresh.length, doneBytes, totalBytes });
  }
  return { copied, failure: null };
}
