import * as z from 'zod';

// Names are taken as they come, as in the journal: what a summary was made from was checked before.
const name = z.string().max(200);
const amount = z.int().min(0);
const points = z.number().min(0);

/** Answers to one criterion over the clips that fill a squad's slots, told apart by who stands behind them. */
const answersSchema = z.strictObject({
  criterion: name,
  metByTeacher: amount,
  metByMachine: amount,
  notMetByTeacher: amount,
  notMetByMachine: amount,
  /** Neither proposed nor decided. */
  open: amount,
});

const squadSchema = z.strictObject({
  code: name,
  name,
  pinnie: z.strictObject({ name, colour: name }),
  /** Changes when other pupils are in the squad; four hex digits, from which no pupil can be told. */
  makeUp: name,
  slots: amount,
  /** Clips that fill a slot. */
  clips: amount,
  /** By the plan's order rule, for one who was there throughout. */
  points,
  max: points,
  /** A person stands behind every answer that counts, and no flag is open. */
  isConfirmed: z.boolean(),
  answers: z.array(answersSchema),
  /** The squad's own criteria, such as care of equipment; null: undecided. */
  marks: z.array(z.strictObject({ criterion: name, points: points.nullable(), max: points })),
  /** Flags that ask the teacher, by kind; kinds without any are left out. */
  flags: z.array(z.strictObject({ code: name, open: amount, kept: amount, cleared: amount })),
  /**
   * Clips of which it is told whether they show the prescribed reps: by the teacher's answer to a criterion that
   * checks reps, else by the count. `short`: they do not.
   */
  reps: z.strictObject({ told: amount, toldByTeacher: amount, short: amount }),
  /** Order parameter of each clip that it was measured in, 0 to 1 in hundredths; see `evidence/unison-score.ts`. */
  unison: z.array(z.number().min(0).max(1)),
});

/** The figures of one lesson that looking back needs: of squads alone, with nothing of any one pupil. */
export const lessonSummarySchema = z.strictObject({
  lesson: z.strictObject({
    code: name,
    title: name,
    school: name,
    className: name,
    /** `2025-05-15`. */
    date: z.iso.date(),
    period: name,
    /** Local begin of the period, `09:50`: sets the order of two lessons of a day. */
    start: name,
  }),
  criteria: z.array(z.strictObject({ code: name, label: name })),
  squadCriteria: z.array(z.strictObject({ code: name, label: name })),
  /** Clips of the routes, those that fill no slot included; 0: the lesson was not held yet, or nothing was brought in. */
  clips: amount,
  /** Of these, clips that nobody has looked into for a card. */
  unseen: amount,
  /** In the plan's order. */
  squads: z.array(squadSchema),
});

/** A lesson's figures by squad, as {@link lessonSummarySchema} describes them field by field. */
export type LessonSummary = z.infer<typeof lessonSummarySchema>;

/** One squad of a {@link LessonSummary}. */
export type SquadSummary = LessonSummary['squads'][number];
