import * as z from 'zod';

/** What is printed once clips are marked: the grade sheet for the teacher, slips for squads, slips for pupils. */
export const SHEET_KINDS = ['grade-sheet', 'squad-slips', 'pupil-slips'] as const;

/** One kind of paper about marked clips; see {@link SHEET_KINDS}. */
export type SheetKind = (typeof SHEET_KINDS)[number];

/** How a sheet is asked for. */
export const sheetOrderSchema = z.strictObject({
  kind: z.enum(SHEET_KINDS),
  paper: z.enum(['a4', 'letter']),
  /** Without colours: pinnies and stills are greys. */
  isGrey: z.boolean(),
  /**
   * The stills of a grade sheet. `blurred`: so coarse that nobody can be known again, the sharp picture is not in the
   * file. Squads with a pupil on the do-not-film list have none, whatever is asked. Slips never have any.
   */
  stills: z.enum(['shown', 'blurred', 'left-out']),
});

/** How a sheet is asked for; see {@link sheetOrderSchema}. */
export type SheetOrder = z.infer<typeof sheetOrderSchema>;
