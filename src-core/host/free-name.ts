import { existsSync } from 'node:fs';
import path from 'node:path';

/** The path of this name in a folder, or of `name 2`, `name 3` and so on where something has it; `ending` such as `.zip`. */
export function findFreePath(folder: string, name: string, ending: string): string {
  for (let at = 1; ; at += 1) {
    const free = path.join(folder, `${name}${at === 1 ? '' : ` ${at}`}${ending}`);
    if (!existsSync(free)) return free;
  }
}
