import { assignSquad } from '../intake/assign-squad.ts';
import type { FoundFile } from '../intake/found-file.ts';
import { findSquad, type Plan, type SquadCode } from '../lesson/plan.ts';
import { groupBy } from '../platform/group-by.ts';
import type { FolderListing } from './ports.ts';

/** Where each squad's clips stand in the lesson's folder of clips. */
export interface Shelf {
  readonly clipsOf: ReadonlyMap<SquadCode, readonly FoundFile[]>;
  /** A free path in the squad's folder that keeps the file's name; the path counts as taken from then on. */
  readonly takePlace: (squad: SquadCode, fileName: string) => string;
}

/** Reads from a listing of the lesson's folder of clips what stands where. */
export function buildShelf(present: FolderListing, plan: Plan): Shelf {
  const owned = present.files.flatMap((file) => {
    const { squad } = assignSquad(file.path, present.name, plan.squads);
    return squad === null ? [] : [{ file, squad }];
  });
  const groups = [...groupBy(owned, ({ squad }) => squad)];
  const clipsOf = new Map(groups.map(([squad, files]) => [squad, files.map(({ file }) => file)]));
  // Names that differ in case alone are one file on many disks.
  const taken = new Set(present.files.map(({ path }) => path.toLowerCase()));
  // The folder its clips lie in already, or one by its name.
  const getFolder = (squad: SquadCode) => {
    const [folder, rest] = clipsOf.get(squad)?.[0]?.path.split('/') ?? [];
    return folder !== undefined && rest !== undefined ? folder : (findSquad(plan, squad)?.name ?? squad);
  };
  const takePlace = (squad: SquadCode, fileName: string) => {
    // A second folder instead of a second name: the name may hold the camera's number or the date.
    for (let attempt = 1; ; attempt += 1) {
      const path = [getFolder(squad), ...(attempt === 1 ? [] : [`also ${attempt}`]), fileName].join('/');
      if (taken.has(path.toLowerCase())) continue;
      taken.add(path.toLowerCase());
      return path;
    }
  };
  return { clipsOf, takePlace };
}
