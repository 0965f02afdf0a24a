/**
 * What a clip's stills share with a copy of the same footage and with no other take: how each second's brightness
 * differs, patch by patch, from the clip's own mean. A perceptual hash over the whole clip: another size, codec or
 * brightness leaves it alone. The still background, which all takes of one place share, is no part of it.
 */
export interface MotionPrint {
  /** One text a second: 72 letters, `a` (much darker than the mean) over `h` (as the mean) to `o` (much brighter). */
  readonly seconds: readonly string[];
}

/** Patches across and down. */
const PATCHES = { across: 9, down: 8 } as const;
const PATCH_COUNT = PATCHES.across * PATCHES.down;

/** Luma steps a letter, and letters on each side of the middle. */
const STEP = 2;
const REACH = 7;
const MIDDLE = 'h'.charCodeAt(0);

/** Longest part of a clip that is kept; two takes differ long before. */
const MOST_SECONDS = 120;

/** Fewer seconds prove nothing. */
const FEWEST_SECONDS = 3;

/** Gathers a print; frames come one a second. */
export interface PrintReader {
  readonly push: (luma: Uint8Array) => void;
  readonly finish: () => MotionPrint;
}

/** A reader for brightness pictures of one size. */
export function createPrintReader(width: number, height: number): PrintReader {
  const frames: Float64Array[] = [];
  return {
    push: (luma) => {
      if (frames.length < MOST_SECONDS) frames.push(averagePatches(luma, width, height));
    },
    finish: () => {
      const means = new Float64Array(PATCH_COUNT);
      for (const frame of frames)
        frame.forEach((value, at) => {
          means[at] = (means[at] ?? 0) + value / frames.length;
        });
      return { seconds: frames.map((frame) => spell(frame, means)) };
    },
  };
}

function averagePatches(luma: Uint8Array, width: number, height: number): Float64Array {
  const sums = new Float64Array(PATCH_COUNT);
  const counts = new Float64Array(PATCH_COUNT);
  for (let at = 0; at < width * height; at++) {
    const column = Math.floor(((at % width) * PATCHES.across) / width);
    const row = Math.floor((Math.floor(at / width) * PATCHES.down) / height);
    const patch = row * PATCHES.across + column;
    sums[patch] = (sums[patch] ?? 0) + (luma[at] ?? 0);
    counts[patch] = (counts[patch] ?? 0) + 1;
  }
  return sums.map((sum, at) => sum / Math.max(1, counts[at] ?? 1));
}

function spell(frame: Float64Array, means: Float64Array): string {
  const letters = [...frame].map((value, at) => {
    const steps = Math.round((value - (means[at] ?? 0)) / STEP);
    return MIDDLE + Math.min(REACH, Math.max(-REACH, steps));
  });
  return String.fromCharCode(...letters);
}

/**
 * How alike two clips' changes are: the correlation of their prints over the seconds both have, -1 to 1. About 1 for
 * copies of one footage, about 0 for two takes. Null where their lengths differ by more than a second, where there is
 * too little, or where nothing changes in one of them.
 */
export function comparePrints(one: MotionPrint, other: MotionPrint): number | null {
  const seconds = Math.min(one.seconds.length, other.seconds.length);
  if (seconds < FEWEST_SECONDS || Math.abs(one.seconds.length - other.seconds.length) > 1) return null;
  const [a, b] = [readSteps(one), readSteps(other)];
  const energy = (a.energies[seconds] ?? 0) * (b.energies[seconds] ?? 0);
  if (energy === 0) return null;
  let product = 0;
  for (let at = 0; at < seconds * PATCH_COUNT; at++) product += (a.steps[at] ?? 0) * (b.steps[at] ?? 0);
  return product / Math.sqrt(energy);
}

interface PrintSteps {
  /** Steps from the mean, second by second. */
  readonly steps: Int8Array;
  /** Sum of their squares before each second. */
  readonly energies: Float64Array;
}

// A print is compared with those of all other clips; its letters are read once.
const known = new WeakMap<MotionPrint, PrintSteps>();

function readSteps(print: MotionPrint): PrintSteps {
  const before = known.get(print);
  if (before) return before;
  const { seconds } = print;
  const steps = new Int8Array(seconds.length * PATCH_COUNT);
  const energies = new Float64Array(seconds.length + 1);
  seconds.forEach((letters, second) => {
    let energy = energies[second] ?? 0;
    for (let at = 0; at < PATCH_COUNT; at++) {
      const step = letters.charCodeAt(at) - MIDDLE;
      steps[second * PATCH_COUNT + at] = step;
      energy += step * step;
    }
    energies[second + 1] = energy;
  });
  known.set(print, { steps, energies });
  return { steps, energies };
}

/** Two clips whose prints agree more than this show the same footage. */
const SAME_FOOTAGE = 0.8;

/** Pairs of clips that show the same footage although their files differ, each once. */
export function findSameFootage(
  clips: readonly { readonly clip: string; readonly print: MotionPrint }[],
): readonly (readonly [string, string])[] {
  return clips.flatMap(({ clip, print }, index) =>
    clips
      .slice(index + 1)
      .filter((other) => (comparePrints(print, other.print) ?? 0) > SAME_FOOTAGE)
      .map((other): [string, string] => [clip, other.clip]),
  );
}
