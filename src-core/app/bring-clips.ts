import type { ClipsProblem } from '../contract/clips-problem.ts';
import type { Problem } from '../contract/problem.ts';
import { assignSquad } from '../intake/assign-squad.ts';
import type { UnreadableFile } from '../intake/folder-problem.ts';
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
  /** Null where the file cannot be read; the same of the lesson's own clips. */
  readonly hashSource: (source: ClipSource, file: FoundFile) => Promise<string | null>;
  readonly hashClip: (path: string) => Promise<string | null>;
  /** Copies and compares; an existing file is never replaced. `file-unreadable`: it is the source that fails. */
  readonly copy: (
    source: ClipSource,
    file: FoundFile,
    toPath: string,
  ) => Promise<Outcome<null, StorageProblem | UnreadableFile>>;
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
 * passed over by content, so bringing the same tablet twice changes nothing. What cannot be read is named and left;
 * where the lesson cannot be written it stops, and what was copied before is passed over next time. Nothing is changed where the clips come from.
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
  const { fresh, unread } = await selectFresh(arrivals, shelf, ports);
  const problems: Problem[] = [
    ...sources.flatMap(({ listing }) => listing.problems),
    ...sources.flatMap(listEmpty),
    ...sorted.flatMap((one) => one.problems),
    ...unread.map(nameUnreadable),
  ];
  const alreadyThere = arrivals.length - fresh.length - unread.length;
  const neededBytes = fresh.reduce((sum, { file }) => sum + file.sizeBytes, 0);
  const freeBytes = await ports.freeBytes();
  if (freeBytes !== null && neededBytes > freeBytes) {
    const tooSmall: Problem = { code: 'disk-too-small', neededBytes, freeBytes };
    return { copied: [], alreadyThere, problems: [...problems, tooSmall] };
  }
  const { copied, failures } = await copyAll(fresh, shelf, context);
  return { copied, alreadyThere, problems: [...problems, ...failures] };
}

function nameUnreadable({ source, file }: Arrival): UnreadableFile {
  return { code: 'file-unreadable', path: `${source.folder}/${file.path}` };
}

/** A folder that was chosen and has no clip in it is the wrong one. */
function listEmpty({ folder, listing }: ClipSource): ClipsProblem[] {
  const hasClips = listing.files.some(({ name }) => getFileRole(name) === 'clip');
  return hasClips || listing.problems.length > 0 ? [] : [{ code: 'folder-without-clips', path: folder }];
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

interface Selection {
  /** Arrivals whose content their squad has not got, each content once. */
  readonly fresh: readonly Arrival[];
  /** Those that cannot be read, as far as they had to be. */
  readonly unread: readonly Arrival[];
}

async function selectFresh(
  arrivals: readonly Arrival[],
  shelf: Shelf,
  ports: BringPorts,
): Promise<Selection> {
  const selections: Selection[] = [];
  const alike = groupBy(arrivals, ({ squad, file }) => `${squad} ${file.sizeBytes}`).values();
  for (const group of alike) selections.push(await selectUnknown(group, shelf, ports));
  return {
    fresh: selections.flatMap(({ fresh }) => fresh),
    unread: selections.flatMap(({ unread }) => unread),
  };
}

/** Of one squad's arrivals of one size, those whose content is new; without rivals nothing needs comparing. */
async function selectUnknown(group: readonly Arrival[], shelf: Shelf, ports: BringPorts): Promise<Selection> {
  const rivals = group.slice(0, 1).flatMap(({ squad, file }) => {
    const present = shelf.clipsOf.get(squad) ?? [];
    return present.filter(({ sizeBytes }) => sizeBytes === file.sizeBytes);
  });
  if (group.length === 1 && rivals.length === 0) return { fresh: group, unread: [] };
  const known = new Set(await Promise.all(rivals.map(({ path }) => ports.hashClip(path))));
  const [fresh, unread]: [Arrival[], Arrival[]] = [[], []];
  for (const arrival of group) {
    const hash = await ports.hashSource(arrival.source, arrival.file);
    if (hash === null) unread.push(arrival);
    else if (!known.has(hash)) fresh.push(arrival);
    known.add(hash);
  }
  return { fresh, unread };
}

async function copyAll(
  fresh: readonly Arrival[],
  shelf: Shelf,
  { ports, job }: { readonly ports: BringPorts; readonly job: Job },
): Promise<{ copied: string[]; failures: Problem[] }> {
  const [copied, failures]: [string[], Problem[]] = [[], []];
  const totalBytes = fresh.reduce((sum, { file }) => sum + file.sizeBytes, 0);
  let doneBytes = 0;
  for (const { source, file, squad } of fresh) {
    job.signal.throwIfAborted();
    const toPath = shelf.takePlace(squad, file.name);
    const copy = await ports.copy(source, file, toPath);
    if (copy.ok) copied.push(toPath);
    else failures.push(...copy.problems);
    // A worn source may have other clips that can be read; a lesson that cannot be written takes none.
    if (failures.some(({ code }) => code !== 'file-unreadable')) break;
    doneBytes += file.sizeBytes;
    const done = copied.length + failures.length;
    job.onProgress({ step: 'copy', done, total: fresh.length, doneBytes, totalBytes });
  }
  return { copied, failures };
}
