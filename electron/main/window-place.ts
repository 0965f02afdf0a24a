import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';

/** Where a window stands, in the system's points. */
export interface WindowPlace {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly isMaximised: boolean;
}

/** The part of a screen that windows may cover. */
export interface ScreenArea {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The least that the page is made for. */
export const LEAST_SIZE = { width: 900, height: 600 } as const;

const FIRST_SIZE = { width: 1440, height: 900 } as const;

/** How much of a window's head must be on some screen, so that it can be taken hold of. */
const HANDLE = { width: 120, height: 40 } as const;

/**
 * Where to open the window: where it stood, if enough of it is still on a screen (a beamer may be gone), else in
 * the middle of the first one. What was kept may be anything.
 */
export function choosePlace(kept: unknown, screens: readonly ScreenArea[]): WindowPlace {
  const place = parsePlace(kept);
  if (place && screens.some((screen) => isReachable(place, screen))) return place;
  const [screen = { x: 0, y: 0, ...FIRST_SIZE }] = screens;
  const width = Math.max(LEAST_SIZE.width, Math.min(FIRST_SIZE.width, screen.width));
  const height = Math.max(LEAST_SIZE.height, Math.min(FIRST_SIZE.height, screen.height));
  const x = Math.round(screen.x + Math.max(0, screen.width - width) / 2);
  const y = Math.round(screen.y + Math.max(0, screen.height - height) / 2);
  return { x, y, width, height, isMaximised: place?.isMaximised ?? false };
}

function parsePlace(kept: unknown): WindowPlace | null {
  if (typeof kept !== 'object' || kept === null) return null;
  const { x, y, width, height, isMaximised } = kept as Readonly<Record<string, unknown>>;
  const numbers = [x, y, width, height];
  if (!numbers.every((value): value is number => Number.isSafeInteger(value))) return null;
  const [left = 0, top = 0, wide = 0, high = 0] = numbers;
  if (wide < LEAST_SIZE.width || high < LEAST_SIZE.height) return null;
  return { x: left, y: top, width: wide, height: high, isMaximised: isMaximised === true };
}

function isReachable({ x, y, width }: WindowPlace, screen: ScreenArea): boolean {
  const seen = Math.min(x + width, screen.x + screen.width) - Math.max(x, screen.x);
  return seen >= HANDLE.width && y >= screen.y && y + HANDLE.height <= screen.y + screen.height;
}

/** What was kept of the window; null where nothing was. */
export function readPlace(home: string): unknown {
  try {
    return JSON.parse(readFileSync(path.join(home, 'window.json'), 'utf8'));
  } catch {
    return null;
  }
}

/**
 * Keeps where the window stands, at once, for the program may be ending. Where that cannot be kept, or is cut off in
 * writing, the window opens in the middle next time.
 */
export function keepPlace(home: string, place: WindowPlace): void {
  try {
    mkdirSync(home, { recursive: true, mode: 0o700 });
    writeFileSync(path.join(home, 'window.json'), `${JSON.stringify(place)}\n`);
  } catch {}
}
