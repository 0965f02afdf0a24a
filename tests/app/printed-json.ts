import * as z from 'zod';

// What the command line prints with --json, as far as other programs may rely on it. Further keys may come.

const instant = z.iso.datetime().nullable();
const code = z.string().min(1);

const problem = z.looseObject({ code, what: z.string().min(1), todo: z.string().min(1).nullable() });

/** One file of `stamps --json`. */
export const stampsSchema = z.array(
  z.looseObject({
    file: code,
    read: instant,
    local: z
      .string()
      .regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d$/)
      .nullable(),
    source: code,
    meaning: z.enum(['start', 'stop', 'unknown']),
    start: instant,
    uncertaintySeconds: z.number().nonnegative().nullable(),
    trust: z.enum(['firm', 'fair', 'weak', 'none']),
    why: z.string().regex(/^[A-Z].*\.$/),
    durationSeconds: z.number().positive().nullable(),
    problems: z.array(z.looseObject({ code, what: z.string().min(1) })),
  }),
);

const flag = z.looseObject({
  code,
  squad: code,
  clip: code.nullable(),
  file: code.nullable(),
  slot: z.int().min(1).optional(),
  key: z.string().regex(/^[a-z-]+:[a-z0-9-]+:[a-z0-9-]+$/),
  settled: z.enum(['kept', 'cleared']).nullable(),
  open: z.boolean(),
  text: z.object({ what: z.string().min(1), todo: z.string().min(1).nullable() }),
});

const clip = z.looseObject({
  id: code,
  file: code,
  start: instant,
  station: code.nullable(),
  stationFrom: z.enum(['teacher', 'card', 'inferred']).nullable(),
  slot: z.int().min(1).nullable(),
  flags: z.array(flag),
  proposals: z.array(
    z.looseObject({
      criterion: code,
      met: z.boolean(),
      confidence: z.number().min(0).max(1),
      reason: z.looseObject({ code, text: z.string().min(1) }),
    }),
  ),
  points: z.number().nullable(),
});

/** `grade --json` and `demo --json`. */
export const gradeSchema = z.looseObject({
  squads: z.array(
    z.looseObject({
      code,
      clips: z.array(clip),
      missing: z.array(z.object({ slot: z.int().min(1), station: code })),
      order: z.looseObject({ kendallTau: z.int().min(0), shareInOrder: z.number().min(0).max(1) }),
      points: z.record(z.enum(['void-route', 'void-after', 'void-clip', 'report']), z.number()),
      flags: z.array(flag),
    }),
  ),
  setAside: z.array(
    z.looseObject({
      id: code,
      files: z.array(code).min(1),
      reason: code,
      start: instant,
      flags: z.array(flag),
    }),
  ),
  flags: z.array(flag),
  problems: z.array(problem),
});

const seconds = z.number().nonnegative();

/** One file of `evidence --json`. */
export const evidenceSchema = z.array(
  z.looseObject({
    file: code,
    durationSeconds: seconds.nullable(),
    reps: z.looseObject({
      count: z.int().positive().nullable(),
      confidence: z.number().min(0).max(1),
      timesSeconds: z.array(seconds),
      cycleSeconds: z.number().positive().nullable(),
      spanSeconds: z.tuple([seconds, seconds]).nullable(),
    }),
    unison: z
      .looseObject({
        score: z.number().min(0).max(1),
        lanes: z
          .array(
            z.looseObject({
              x: z.number().min(0).max(1),
              lagSeconds: z.number(),
              reps: z.int().nonnegative(),
            }),
          )
          .min(2),
      })
      .nullable(),
    cards: z.array(z.looseObject({ text: code, atSeconds: seconds })),
    problems: z.array(problem),
    milliseconds: z.number().nonnegative(),
    cpuMilliseconds: z.number().nonnegative(),
  }),
);

/** `check --json`. */
export const checkSchema = z.looseObject({
  stations: z.int(),
  squads: z.int(),
  pupils: z.int(),
  problems: z.array(problem),
});

/** `mark --json`. */
export const markSchema = z.looseObject({
  events: z.array(
    z.looseObject({ id: z.ulid(), at: z.iso.datetime(), who: code, what: z.looseObject({ kind: code }) }),
  ),
  problems: z.array(problem),
});

/** `export --json`. */
export const exportSchema = z.looseObject({
  out: code.nullable(),
  isFinal: z.boolean(),
  counts: z.looseObject({ openFlags: z.int(), pupils: z.looseObject({ unconfirmed: z.int() }) }),
  problems: z.array(problem),
});
