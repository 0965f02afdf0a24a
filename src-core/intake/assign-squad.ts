import type { Squad, SquadCode } from '../lesson/plan.ts';
import { findSquadByName } from '../lesson/squad-name.ts';

/** Whose folder a file lies in, or why nobody can tell. */
export type FolderOwner =
  | { readonly squad: SquadCode }
  | { readonly squad: null; readonly reason: 'no-squad-named' | 'several-squads-named' };

/**
 * Tells the squad from the folders a file lies in: any folder on the way may name it (`Tablet 3/DCIM/100APPLE`),
 * as long as all that name one name the same. The scanned folder's own name counts only where none below it does,
 * so one squad's folder can be scanned alone.
 */
export function assignSquad(
  filePath: string,
  scannedFolderName: string,
  squads: readonly Squad[],
): FolderOwner {
  const folders = filePath.split('/').slice(0, -1);
  const named = getNamedSquads(folders, squads);
  const all = named.length > 0 ? named : getNamedSquads([scannedFolderName], squads);
  const [only, second] = all;
  if (only === undefined) return { squad: null, reason: 'no-squad-named' };
  return second === undefined ? { squad: only } : { squad: null, reason: 'several-squads-named' };
}

function getNamedSquads(folders: readonly string[], squads: readonly Squad[]): SquadCode[] {
  return [...new Set(folders.flatMap((folder) => findSquadByName(folder, squads)?.code ?? []))];
}
