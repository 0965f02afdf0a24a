import * as z from 'zod';

// The messages are keys that renderer/text words for the teacher.
const localTime = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'local-time');
const shortCode = z.string().regex(/^[a-z0-9][a-z0-9-]{0,31}$/, 'short-code');
const sentence = z.string().trim().min(1, 'some-words').max(200, 'at-most-200-characters');
const sentences = z.array(sentence).max(12).default([]);

/** A station's code as painted on its card: one to three capitals or digits. */
const stationCode = z.string().regex(/^[A-Z0-9]{1,3}$/, 'station-code');

const station = z.strictObject({
  code: stationCode,
  place: sentence,
  exercise: sentence,
  /** Prescribed repetitions, counted by `counting`. */
  reps: z.int().min(1).max(200),
  /** `cycle`: one rep per full movement and back. `side`: one rep each time a side is done (left, right: two). */
  counting: z.enum(['cycle', 'side']).default('cycle'),
  /** Usual length of one full cycle of the movement, shortest and longest, in seconds. */
  cycleSeconds: z.tuple([z.number().min(0.2).max(20), z.number().min(0.2).max(20)]).optional(),
  /** The riddle that leads here; a squad reads it at the station before this one on its route. */
  clue: sentence.optional(),
  /** What to do on the way here, such as two laps. */
  transit: sentence.optional(),
  caution: sentence.optional(),
  /** How one rep is counted, in words for the pupils. */
  countsAs: sentence.optional(),
  easier: sentence.optional(),
  harder: sentence.optional(),
  /** What must stand there. */
  equipment: sentence.optional(),
  /** Web address of a demonstration; stands in the card's code before our own text, so it has no fragment. */
  demonstration: z
    .url({ protocol: /^https?$/, error: 'web-address' })
    .max(200, 'at-most-200-characters')
    .refine((address) => !address.includes('#'), 'no-fragment')
    .optional(),
  /** Picture of the place, a path below the lesson folder such as `photos/a.jpg`. */
  photo: z
    .string()
    .regex(/^photos\/[^/\\]{1,120}\.(jpe?g|png)$/i, 'photo-path')
    .optional(),
  setting: z.enum(['indoor', 'outdoor']).optional(),
  /** The exercise of the library that this one was taken from; see `library/library.ts`. */
  libraryCode: shortCode.optional(),
});

const squad = z.strictObject({
  code: shortCode,
  name: sentence,
  pinnie: z.strictObject({
    name: sentence,
    colour: z.string().regex(/^#[0-9A-Fa-f]{6}$/, 'colour'),
  }),
  /** What stands on the tablet's label. */
  tablet: sentence,
  startsAt: stationCode,
  /** The stations in the order this squad must visit them; each position is a slot. */
  route: z.array(stationCode).min(1).max(40),
});

const period = z.strictObject({ code: shortCode, start: localTime, end: localTime });

const standards = z.array(shortCode).max(9).default([]);

const clipCriterion = z.strictObject({
  code: shortCode,
  label: sentence,
  /** What evidence can speak for it; `judgement` is the teacher's eye alone. */
  checks: z.enum(['place', 'exercise', 'reps', 'together', 'judgement']),
  /** What the criterion earns under the award `sum`. */
  points: z.number().min(0).max(100).default(1),
  /** Codes of the plan's standards that it speaks to. */
  standards,
});

const squadCriterion = z.strictObject({
  code: shortCode,
  label: sentence,
  maxPoints: z.number().min(0).max(100),
  standards,
});

const rubric = z.strictObject({
  clip: z.array(clipCriterion).min(1).max(9),
  /** `all-or-nothing`: a clip earns `points` when every criterion is met. `sum`: the met criteria's points add up. */
  award: z
    .discriminatedUnion('rule', [
      z.strictObject({ rule: z.literal('all-or-nothing'), points: z.number().min(0).max(100) }),
      z.strictObject({ rule: z.literal('sum') }),
    ])
    .default({ rule: 'all-or-nothing', points: 1 }),
  squad: z.array(squadCriterion).max(9).default([]),
});

const tolerances = z.strictObject({
  /** Largest lag of one performer behind the group that still counts as together; less where the movement is fast. */
  togetherSeconds: z.number().min(0.05).max(5).default(0.35),
  /** A clip whose start is less certain than this is flagged, in seconds. */
  clockDoubtSeconds: z.number().min(1).max(3600).default(90),
  /** How long before its bell and after its end a period still owns a clip, in minutes. */
  periodGraceMinutes: z.number().min(0).max(60).default(5),
  /** A shorter clip cannot show an exercise and is flagged, in seconds. */
  shortestClipSeconds: z.number().min(0).max(60).default(4),
});

/** What is said to the class before it starts, and printed on the briefing sheet. */
const briefing = z.strictObject({
  objective: sentence.optional(),
  words: z
    .array(z.strictObject({ word: sentence, meaning: sentence }))
    .max(12)
    .default([]),
  rules: sentences,
  boundaries: sentences,
  cautions: sentences,
});

/** The parts of the lesson that the class clock counts down, in minutes; what is left of the period is work. */
const timing = z.strictObject({
  warmUpMinutes: z.number().min(0).max(60).default(6),
  clearUpMinutes: z.number().min(0).max(60).default(5),
});

/** How squads were formed, so that it can be repeated; pupils by their ids in roster.csv. */
const grouping = z.strictObject({
  seed: z.int().min(0).max(999_999).default(1),
  apart: z
    .array(z.array(z.string().min(1)).min(2))
    .max(60)
    .default([]),
  together: z
    .array(z.array(z.string().min(1)).min(2))
    .max(60)
    .default([]),
});

/** How routes were made, so that they can be made again; see `routes/`. */
const rotation = z.strictObject({
  /** `cyclic`: everybody in one order, from different starts. `balanced`: each station follows each other equally often. */
  design: z.enum(['cyclic', 'balanced']).default('cyclic'),
  seed: z.int().min(0).max(999_999).default(1),
  /** Stations that no route visits this time. */
  leftOut: z.array(stationCode).max(40).default([]),
  /** Where squads must begin, whatever else would be shorter. */
  fixedStarts: z
    .array(z.strictObject({ squad: shortCode, station: stationCode }))
    .max(40)
    .default([]),
  /** Legs that nobody may walk: from a station straight to another. */
  forbidden: z
    .array(z.tuple([stationCode, stationCode]))
    .max(200)
    .default([]),
  /** Walking distance between two places, the same both ways, in metres. */
  distances: z
    .array(
      z.strictObject({ between: z.tuple([stationCode, stationCode]), metres: z.number().min(0).max(5000) }),
    )
    .max(800)
    .default([]),
});

/** The fields a grade sheet can show; see `gradebook/`. */
const sheetField = z.enum([
  'pupil',
  'name',
  'given',
  'family',
  'squad',
  'points',
  'max',
  'percent',
  'scale',
  'state',
  'comment',
]);

/** plan.json, version 2: everything the teacher prescribes for one lesson. Unknown keys are refused, so typing slips show. */
export const planSchema = z.strictObject({
  format: z.literal('routemark-plan'),
  version: z.literal(2),
  lesson: z.strictObject({
    /** Stands on every station card; keeps the cards of two lessons apart. */
    code: z.string().regex(/^[A-Z0-9-]{1,12}$/, 'lesson-code'),
    /** Counts up when the cards are printed anew with other content. */
    revision: z.int().min(1).max(999),
    title: sentence,
    school: sentence,
    className: sentence,
    date: z.iso.date(),
    period: shortCode,
  }),
  /** The school's IANA time zone, such as America/Halifax. */
  zone: z.string().min(1),
  periods: z.array(period).min(1).max(24),
  stations: z.array(station).min(1).max(40),
  squads: z.array(squad).min(1).max(40),
  briefing: briefing.default(() => briefing.parse({})),
  timing: timing.default(() => timing.parse({})),
  grouping: grouping.default(() => grouping.parse({})),
  rotation: rotation.default(() => rotation.parse({})),
  /** Curriculum standards that criteria may be tagged with, in the teacher's own choice. */
  standards: z
    .array(z.strictObject({ code: shortCode, text: sentence, source: sentence }))
    .max(60)
    .default([]),
  rubric,
  /** What leaving the route's order costs; see `marking/order-rule.ts`. */
  orderRule: z.enum(['void-route', 'void-after', 'void-clip', 'report']),
  /** Which of several clips of one slot counts. */
  retake: z.enum(['first', 'last']).default('last'),
  tolerances: tolerances.default(() => tolerances.parse({})),
  /** Marks by share of points, best first; a pupil below the last step gets the last mark. */
  scale: z
    .array(z.strictObject({ mark: z.string().min(1).max(20), fromPercent: z.number().min(0).max(100) }))
    .max(20)
    .default([]),
  gradeSheet: z
    .strictObject({ columns: z.array(z.strictObject({ head: z.string().min(1), field: sheetField })).min(1) })
    .default(() => ({
      columns: (['pupil', 'name', 'squad', 'points', 'max', 'percent', 'state', 'comment'] as const).map(
        (field) => ({
          head: field,
          field,
        }),
      ),
    })),
});

/** One lesson as planned; see {@link planSchema} for each field's meaning and unit. */
export type Plan = z.infer<typeof planSchema>;

/** A place on the circuit with its prescribed exercise. */
export type Station = Plan['stations'][number];

/** Pupils who share a pinnie colour, a tablet and a route. */
export type Squad = Plan['squads'][number];

/** What leaving the route's order costs. */
export type OrderRule = Plan['orderRule'];

/** A column source of the grade sheet. */
export type SheetField = z.infer<typeof sheetField>;

/** A station's code, as on its card. */
export type StationCode = string;

/** A squad's code, unique within the plan. */
export type SquadCode = string;

/** Position in a squad's route, from 0. */
export type SlotIndex = number;

/** The station with this code, or null where the plan has none. */
export function findStation(plan: Plan, code: StationCode): Station | null {
  return plan.stations.find((station) => station.code === code) ?? null;
}

/** Whether squads find their way by clues; where no station has one, they walk by the list on their sheet. */
export function hasClues({ stations }: Pick<Plan, 'stations'>): boolean {
  return stations.some(({ clue }) => clue !== undefined);
}

/** The squad with this code, or null where the plan has none. */
export function findSquad(plan: Plan, code: SquadCode): Squad | null {
  return plan.squads.find((squad) => squad.code === code) ?? null;
}
