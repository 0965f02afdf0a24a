import * as z from 'zod';
import { LONGEST_CORRECTION_SECONDS } from '../lesson/clock-correction.ts';
import { ATTENDANCES } from '../lesson/roster.ts';
import { MOST_LANES } from './given-lanes.ts';

// Names of clips, squads, criteria and pupils are taken as they come: a plan that was edited since must not turn
// a decision of yesterday into an invalid line. Whether they still mean something is for the reader of the replay.
const name = z.string().min(1).max(200);
const reason = z.string().trim().min(1, 'some-words').max(500, 'at-most-500-characters');
const points = z.number().min(-10_000).max(10_000);
const count = z.int().min(0);

const ulid = z.string().regex(/^[0-7][0-9A-HJKMNP-TV-Z]{25}$/, 'ulid');

/** One form only, so that instants sort as text. */
const instant = z.string().regex(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}Z$/, 'utc-instant');

const decisions = [
  /** Where a clip was filmed; null takes the word back. */
  z.strictObject({ kind: z.literal('station-set'), clip: name, station: name.nullable() }),
  /** The squad that filmed a clip; null gives it back to the squad of its folder. */
  z.strictObject({ kind: z.literal('clip-moved'), clip: name, squad: name.nullable() }),
  /** The slot that a clip fills, from 0; `none`: it fills none and is set aside; null takes the word back. */
  z.strictObject({
    kind: z.literal('clip-placed'),
    clip: name,
    slot: z.union([z.int().min(0).max(39), z.literal('none')]).nullable(),
  }),
  /** Seconds to add to what a squad's tablet shows to get the true time (slow tablets: above 0); null takes it back. */
  z.strictObject({
    kind: z.literal('clock-set'),
    squad: name,
    correctionSeconds: z.number().min(-LONGEST_CORRECTION_SECONDS).max(LONGEST_CORRECTION_SECONDS).nullable(),
  }),
  /** Whether a clip meets a criterion; null: undecided again. */
  z.strictObject({
    kind: z.literal('criterion-marked'),
    clip: name,
    criterion: name,
    met: z.boolean().nullable(),
  }),
  /** All answers shown for a clip, made the teacher's own as they stood; criteria not named stay as they are. */
  z.strictObject({ kind: z.literal('clip-confirmed'), clip: name, answers: z.record(name, z.boolean()) }),
  /** What the teacher wants to remember of a clip, or tell its squad; null takes the note away. */
  z.strictObject({
    kind: z.literal('clip-noted'),
    clip: name,
    text: z.string().trim().min(1, 'some-words').max(2000, 'at-most-2000-characters').nullable(),
  }),
  /**
   * The performers in a clip's picture, over the machine's estimate: how many, or where each one is from the picture's
   * left edge (0) to its right (1); null takes the word back.
   */
  z.strictObject({
    kind: z.literal('lanes-set'),
    clip: name,
    lanes: z
      .union([z.int().min(1).max(MOST_LANES), z.array(z.number().min(0).max(1)).min(1).max(MOST_LANES)])
      .nullable(),
  }),
  /** A flag answered: `kept` (it is as flagged) or `cleared` (it is not); null opens it again. */
  z.strictObject({
    kind: z.literal('flag-settled'),
    flag: name,
    settled: z.enum(['kept', 'cleared']).nullable(),
    reason: reason.nullable(),
  }),
  /** What a squad earns for a criterion of its own; null: undecided again. */
  z.strictObject({
    kind: z.literal('squad-marked'),
    squad: name,
    criterion: name,
    points: points.min(0).nullable(),
  }),
  /** Whether a pupil was there, over the roster's word; `arrived` (local, HH:MM) for late ones; null: roster's word. */
  z.strictObject({
    kind: z.literal('attendance-set'),
    pupil: name,
    attendance: z.enum(ATTENDANCES).nullable(),
    arrived: z
      .string()
      .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'local-time')
      .nullable(),
  }),
  /** Points changed by hand, by an amount or to a value, always with a reason; change null takes it back. */
  z.strictObject({
    kind: z.literal('points-overridden'),
    of: z.discriminatedUnion('type', [
      z.strictObject({ type: z.literal('pupil'), pupil: name }),
      z.strictObject({ type: z.literal('squad'), squad: name }),
      z.strictObject({ type: z.literal('clip'), clip: name }),
    ]),
    change: z
      .discriminatedUnion('type', [
        z.strictObject({ type: z.literal('by'), points }),
        z.strictObject({ type: z.literal('to'), points: points.min(0) }),
      ])
      .nullable(),
    reason,
  }),
] as const;

const decision = z.discriminatedUnion('kind', decisions);

const act = z.discriminatedUnion('kind', [
  ...decisions,
  /** A decision taken back. */
  z.strictObject({ kind: z.literal('undone'), target: ulid }),
  /** A decision that was taken back, in force again. */
  z.strictObject({ kind: z.literal('redone'), target: ulid }),
  /** Something was written for the world outside, and what was open in it. A record: nothing undoes it. */
  z.strictObject({
    kind: z.literal('handed-in'),
    files: z.array(z.string().min(1)).max(1000),
    pupils: count,
    /** Pupils whose mark was written as unconfirmed. */
    unconfirmed: count,
    openFlags: count,
  }),
]);

/** One line of marks.jsonl after the header, version 1. Unknown keys are refused, as in the plan. */
export const journalEventSchema = z.strictObject({
  /** A ULID: two journals of one lesson merge by it. */
  id: ulid,
  /** When, in UTC with milliseconds; strictly later than the event before it in the same journal. */
  at: instant,
  /** Who decided: a person's name or `teacher`. */
  who: z.string().trim().min(1).max(100),
  what: act,
  /** What was decided on the same matter before, for the audit trail; null where nothing was. Replay ignores it. */
  was: decision.nullable(),
});

/** One decision or act with its time, author and what stood before; see {@link journalEventSchema}. */
export type JournalEvent = z.infer<typeof journalEventSchema>;

/** Everything an event can say. */
export type JournalAct = JournalEvent['what'];

/** Every kind of event that version 1 knows; an event of another kind comes from a newer program. */
export type JournalActKind = JournalAct['kind'];

/** The part of an event that changes a mark and can be undone. */
export type JournalDecision = z.infer<typeof decision>;

/** Whose points an override changes. */
export type OverrideTarget = Extract<JournalDecision, { kind: 'points-overridden' }>['of'];

/** How an override changes points: `by` an amount, which may be negative, or `to` a value. */
export type PointsChange = NonNullable<Extract<JournalDecision, { kind: 'points-overridden' }>['change']>;

/** An event's identity, a ULID. */
export type JournalEventId = string;

/** Every kind as a list, to tell a newer program's event from a damaged line. */
export const journalActKindSchema = z.enum([
  'station-set',
  'clip-moved',
  'clip-placed',
  'clock-set',
  'criterion-marked',
  'clip-confirmed',
  'clip-noted',
  'lanes-set',
  'flag-settled',
  'squad-marked',
  'attendance-set',
  'points-overridden',
  'undone',
  'redone',
  'handed-in',
] satisfies readonly JournalActKind[]);
