import type { Squad } from '../../../src-core/lesson/plan.ts';
import { findSquadByName } from '../../../src-core/lesson/squad-name.ts';

/**
 * The path of a file that was let go on a tray: below that squad's name, unless a folder on its way names a squad
 * itself. A folder of all squads can so fall anywhere. `tray` null: beside the trays.
 */
export function givePathToTray(path: string, tray: Squad | null, squads: readonly Squad[]): string {
  const folders = path.split('/').slice(0, -1);
  const isNamed = folders.some((folder) => findSquadByName(folder, squads) !== null);
  return tray === null || isNamed ? path : `${tray.name}/${path}`;
}
