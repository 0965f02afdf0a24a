import * as z from 'zod';
import type { CardReading } from '../evidence/card-vote.ts';
import type { ClipLook } from '../evidence/clip-look.ts';
import type { ClipMovement } from '../evidence/clip-movement.ts';
import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { MotionPrint } from '../evidence/motion-print.ts';
import type { Seconds } from '../platform/units.ts';
import type { MotionSeries } from '../signal/motion-series.ts';
import type { ClipFacts } from './clip-facts.ts';
import { defineJsonAnalyser, definePackedAnalyser } from './evidence-cache.ts';

// Only what would be the same next time is kept: a missing program, a stop or a time limit is not.
const keptProblems = z.array(
  z.discriminatedUnion('code', [
    z.strictObject({ code: z.literal('decode-failed'), detail: z.string() }),
    z.strictObject({ code: z.literal('decode-cut-short'), lastSeconds: z.number(), detail: z.string() }),
  ]),
);

/** The codes read in a clip, and how thoroughly it was searched. */
export interface KeptCards {
  readonly readings: readonly CardReading[];
  readonly problems: readonly EvidenceProblem[];
  /** `key-pictures`: a first look alone, which misses cards; `searched`: head and tail picture by picture. */
  readonly how: 'key-pictures' | 'searched';
}

/** The codes of a clip; the version counts up when they are looked for or read in another way. */
export const cardsAnalyser = defineJsonAnalyser<KeptCards>(
  'cards',
  2,
  z.strictObject({
    readings: z.array(z.strictObject({ text: z.string(), atSeconds: z.number() })),
    problems: keptProblems,
    how: z.enum(['key-pictures', 'searched']),
  }),
);

const placeLook = z.strictObject({ columns: z.int(), rows: z.int(), cells: z.array(z.number()) });

/** Place and pinnies of a clip. */
export const lookAnalyser = defineJsonAnalyser<ClipLook>(
  'look',
  1,
  z.strictObject({
    durationSeconds: z.number().nullable(),
    place: placeLook.nullable(),
    movingColours: z.array(
      z.strictObject({ lab: z.tuple([z.number(), z.number(), z.number()]), share: z.number() }),
    ),
    from: z.enum(['key-pictures', 'whole-clip']),
  }),
);

/** What ffmpeg said of a clip at the first look, so that watching need not ask again. */
export const factsAnalyser = defineJsonAnalyser<ClipFacts>(
  'facts',
  1,
  z.strictObject({
    durationSeconds: z.number().nullable(),
    rateHz: z.number().nullable(),
    pixels: z.int().nullable(),
    turnDegrees: z.union([z.literal(0), z.literal(90), z.literal(180), z.literal(270)]),
  }),
);

/** What watching a clip whole gives beside its motion and its stills. */
export interface KeptWatch {
  readonly print: MotionPrint;
  readonly problems: readonly EvidenceProblem[];
  /** False: not one picture came, so that neither motion nor stills are kept. */
  readonly hasMotion: boolean;
  /** The versions of the entries that the same watching left. */
  readonly parts: { readonly motion: number; readonly stills: number; readonly look: number };
}

/** The print of a clip's changes, and what went wrong while it was watched. */
export const watchAnalyser = defineJsonAnalyser<KeptWatch>(
  'watch',
  2,
  z.strictObject({
    print: z.strictObject({ seconds: z.array(z.string()) }),
    problems: keptProblems,
    hasMotion: z.boolean(),
    parts: z.strictObject({ motion: z.int(), stills: z.int(), look: z.int() }),
  }),
);

/** The small JPEG pictures that strips are chosen from. */
export interface KeptStills {
  /** In order of time. */
  readonly stills: readonly { readonly atSeconds: Seconds; readonly jpeg: Uint8Array }[];
}

/** The stills of a clip. */
export const stillsAnalyser = definePackedAnalyser<KeptStills, { atSeconds: number[] }>('stills', 1, {
  head: z.strictObject({ atSeconds: z.array(z.number()) }),
  pack: ({ stills }) => ({
    head: { atSeconds: stills.map(({ atSeconds }) => atSeconds) },
    parts: stills.map(({ jpeg }) => jpeg),
  }),
  unpack: ({ atSeconds }, parts) => {
    const stills = parts.flatMap((jpeg, at) => {
      const time = atSeconds[at];
      return time === undefined ? [] : [{ atSeconds: time, jpeg }];
    });
    return stills.length === atSeconds.length ? { stills } : null;
  },
});

const motionHead = z.strictObject({
  rateHz: z.number(),
  fromSeconds: z.number(),
  width: z.int(),
  height: z.int(),
  columns: z.int(),
  rows: z.int(),
  frameCount: z.int(),
  fine: z.strictObject({ columns: z.int(), rows: z.int() }),
});

/** A clip's motion; what counts reps and measures unison starts from it, so that a change there decodes nothing. */
export const motionAnalyser = definePackedAnalyser<MotionSeries, z.infer<typeof motionHead>>('motion', 4, {
  head: motionHead,
  pack: ({ u, v, camera, fine, ...head }) => ({
    head: { ...head, fine: { columns: fine.columns, rows: fine.rows } },
    parts: [u, v, camera, fine.u, fine.v].map(viewAsBytes),
  }),
  unpack: (head, parts) => {
    const { frameCount, columns, rows, fine } = head;
    const [u, v, camera, fineU, fineV] = parts.map(
      (part) => new Float32Array(part.buffer, 0, part.byteLength >> 2),
    );
    if (u?.length !== frameCount * columns * rows || v?.length !== u.length) return null;
    if (camera?.length !== frameCount * 4) return null;
    if (fineU?.length !== frameCount * fine.columns * fine.rows || fineV?.length !== fineU.length)
      return null;
    return { ...head, u, v, camera, fine: { ...fine, u: fineU, v: fineV } };
  },
});

function viewAsBytes({ buffer, byteOffset, byteLength }: Float32Array): Uint8Array {
  return new Uint8Array(buffer, byteOffset, byteLength);
}

/**
 * A movement as it is kept; the options it was read with are part of its entry's name. It is as old as the motion it was
 * read from, whose version stands before its own; that counts up with every change of how reps or unison are read, or
 * lessons keep what was read before it.
 */
const MOVEMENT_VERSION = motionAnalyser.version * 1000 + 10;

/** Reps, unison and camera motion under one set of options, such as `movement-3f9a12`. */
export function defineMovementAnalyser(optionsKey: string) {
  return definePackedAnalyser<ClipMovement, { json: string }>(`movement-${optionsKey}`, MOVEMENT_VERSION, {
    head: z.strictObject({ json: z.string() }),
    pack: ({ reps: { trace, ...reps }, ...rest }) => ({
      head: { json: JSON.stringify({ ...rest, reps, rateHz: trace.rateHz }) },
      parts: [trace.cycleSecondsAt, trace.strength, trace.signal].map(viewAsBytes),
    }),
    unpack: ({ json }, parts) => {
      // Written by this very version, so that its shape needs no second description.
      const { rateHz, reps, ...rest } = JSON.parse(json) as Omit<ClipMovement, 'reps'> & {
        rateHz: number;
        reps: Omit<ClipMovement['reps'], 'trace'>;
      };
      const [cycleSecondsAt, strength, signal] = parts.map(
        (part) => new Float32Array(part.buffer, 0, part.byteLength >> 2),
      );
      if (!cycleSecondsAt || !strength || !signal) return null;
      return { ...rest, reps: { ...reps, trace: { rateHz, cycleSecondsAt, strength, signal } } };
    },
  });
}
