import { execFile } from 'node:child_process';
import { accessSync, constants } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import type { DecodeProblem } from '../evidence/decode-problem.ts';
import type { Outcome } from '../platform/outcome.ts';
import { fail, succeed } from '../platform/outcome.ts';

/** An ffmpeg that has answered for itself. */
export interface Ffmpeg {
  /** Absolute path of the program, or what ROUTEMARK_FFMPEG says. */
  readonly path: string;
  /** First line of `ffmpeg -version`. */
  readonly version: string;
  /** How this version is told to pass frames on as they are, neither doubled nor dropped. */
  readonly passThrough: readonly string[];
}

/** Long enough for a program on a slow disk that a virus scanner reads first. */
const ANSWER_LIMIT_MS = 30_000;

const answers = new Map<string, Promise<Ffmpeg | null>>();

/**
 * The first ffmpeg that runs: ROUTEMARK_FFMPEG, the package ffmpeg-static, the PATH. Each program is asked once
 * per process. `scripts/setup.mjs` looks in the same places.
 */
export async function findFfmpeg(
  environment: NodeJS.ProcessEnv = process.env,
): Promise<Outcome<Ffmpeg, DecodeProblem>> {
  const places = listPlaces(environment);
  for (const path of places) {
    const asked = answers.get(path) ?? ask(path);
    answers.set(path, asked);
    const found = await asked;
    if (found) return succeed(found);
    answers.delete(path); // It may be installed while we run.
  }
  return fail({ code: 'ffmpeg-missing', tried: places });
}

function listPlaces(environment: NodeJS.ProcessEnv): string[] {
  const name = process.platform === 'win32' ? 'ffmpeg.exe' : 'ffmpeg';
  const onPath = (environment.PATH ?? '')
    .split(delimiter)
    .filter((folder) => folder !== '')
    .map((folder) => join(folder, name))
    .find(isExecutable);
  const named = environment.ROUTEMARK_FFMPEG || undefined;
  return [named, findPackaged(), onPath].filter((path) => path !== undefined);
}

/** The program of ffmpeg-static; undefined where the package, its download or this system's build is absent. */
function findPackaged(): string | undefined {
  try {
    const path: unknown = createRequire(import.meta.url)('ffmpeg-static');
    return typeof path === 'string' && isExecutable(path) ? path : undefined;
  } catch {
    return undefined;
  }
}

function isExecutable(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

function ask(path: string): Promise<Ffmpeg | null> {
  return new Promise((resolve) => {
    execFile(path, ['-hide_banner', '-version'], { timeout: ANSWER_LIMIT_MS }, (error, output) => {
      const [version = ''] = output.split('\n');
      const isFfmpeg = !error && version.startsWith('ffmpeg version');
      resolve(isFfmpeg ? { path, version, passThrough: choosePassThrough(version) } : null);
    });
  });
}

/**
 * `-fps_mode` came with ffmpeg 5.1 in July 2022 (its Changelog). Builds from the repository carry no plain number;
 * the year of their copyright line tells.
 */
function choosePassThrough(version: string): readonly string[] {
  const [, major, minor] = /^ffmpeg version n?(\d{1,2})\.(\d+)/.exec(version) ?? [];
  const [, year] = /-(\d{4}) the FFmpeg/.exec(version) ?? [];
  const age =
    major === undefined ? Number(year ?? 9999) / 2023 : (Number(major) + Number(minor) / 100) / 5.01;
  return age < 1 ? ['-vsync', 'passthrough'] : ['-fps_mode', 'passthrough'];
}
