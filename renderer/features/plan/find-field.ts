/**
 * The paths to look for, nearest first, when a problem names one place of plan.json: the place itself, then what it is
 * part of. `stations[2].cycleSeconds[1]` leads on to `stations[2].cycleSeconds`, `stations[2]` and `stations`.
 */
export function listPlaces(path: string): readonly string[] {
  const parts = path.split(/(?=\.|\[)/);
  return parts.map((_, at) => parts.slice(0, parts.length - at).join(''));
}

/** Place in the list of the station that a path leads into, from 0; null: into none. */
export function findStationPlace(path: string): number | null {
  const found = /^stations\[(\d+)\]/.exec(path)?.[1];
  return found === undefined ? null : Number(found);
}

/** The nearest thing on the sheet that can take the focus for a path of plan.json; null: nothing stands for it. */
export function findField(path: string): HTMLElement | null {
  for (const place of listPlaces(path)) {
    const exact = document.querySelector<HTMLElement>(`[data-at=${CSS.escape(place)}]`);
    const focusable = exact?.matches('button, input') ? exact : exact?.querySelector<HTMLElement>('button');
    const inside = document.querySelector<HTMLElement>(`button[data-at^=${CSS.escape(`${place}.`)}]`);
    const found = focusable ?? inside;
    if (found) return found;
  }
  return null;
}
