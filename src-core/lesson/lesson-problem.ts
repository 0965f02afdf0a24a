/** Where in plan.json or roster.csv something is wrong, and what; worded by the faces. */
export type PlanProblem =
  | { readonly code: 'plan-not-json'; readonly line: number; readonly column: number }
  | { readonly code: 'plan-not-ours' }
  | { readonly code: 'plan-newer'; readonly version: number; readonly newest: number }
  | {
      readonly code: 'plan-field';
      /** Such as `stations[2].reps`. */
      readonly path: string;
      /** What was expected there: a key such as `local-time`, `number`, `unknown-key`. */
      readonly expected: string;
      /** Bounds, allowed values or the like, where the key has them. */
      readonly detail: string | null;
    }
  | { readonly code: 'plan-zone-unknown'; readonly path: string; readonly zone: string }
  | { readonly code: 'plan-code-twice'; readonly path: string; readonly value: string }
  | {
      readonly code: 'plan-name-ambiguous';
      readonly path: string;
      readonly other: string;
      readonly name: string;
    }
  | { readonly code: 'plan-station-unknown'; readonly path: string; readonly station: string }
  | { readonly code: 'plan-station-repeated'; readonly path: string; readonly station: string }
  | {
      readonly code: 'plan-start-differs';
      readonly path: string;
      readonly start: string;
      readonly first: string;
    }
  | {
      readonly code: 'plan-squads-meet';
      readonly path: string;
      readonly station: string;
      readonly slot: number;
      readonly squads: readonly [string, string];
    }
  | { readonly code: 'plan-period-unknown'; readonly path: string; readonly period: string }
  | {
      readonly code: 'plan-period-reversed';
      readonly path: string;
      readonly start: string;
      readonly end: string;
    }
  | { readonly code: 'plan-periods-overlap'; readonly path: string; readonly other: string }
  | { readonly code: 'plan-range-reversed'; readonly path: string }
  | { readonly code: 'plan-scale-order'; readonly path: string }
  | ReadinessProblem;

/** What would go wrong in class, although the plan can be marked by. Seconds and minutes are rounded to whole ones. */
export type ReadinessProblem =
  /** More characters than the card has room for; see `card-limits.ts`. */
  | {
      readonly code: 'plan-text-too-long';
      readonly path: string;
      readonly length: number;
      readonly limit: number;
    }
  /** A word that no line of its place on paper is wide enough for. */
  | {
      readonly code: 'plan-word-too-long';
      readonly path: string;
      readonly word: string;
    }
  /** Some stations are found by a clue and this one, which some squad must find, is not. */
  | { readonly code: 'plan-clue-missing'; readonly path: string; readonly station: string }
  | {
      readonly code: 'plan-too-many-squads';
      readonly path: string;
      readonly squads: number;
      readonly stations: number;
    }
  | {
      readonly code: 'plan-pinnies-alike';
      readonly path: string;
      readonly squads: readonly [string, string];
    }
  /** A criterion speaks to a standard that the plan does not list. */
  | { readonly code: 'plan-standard-unknown'; readonly path: string; readonly standard: string }
  /** The rotation speaks of a squad that the plan does not have. */
  | { readonly code: 'plan-squad-unknown'; readonly path: string; readonly squad: string }
  /** The rotation speaks of a station that the plan does not have. */
  | { readonly code: 'plan-rotation-station-unknown'; readonly path: string; readonly station: string }
  /** A route visits a station that the rotation leaves out. */
  | {
      readonly code: 'plan-left-out-visited';
      readonly path: string;
      readonly squad: string;
      readonly station: string;
    }
  /** A squad begins elsewhere than the rotation fixes. */
  | {
      readonly code: 'plan-start-not-kept';
      readonly path: string;
      readonly squad: string;
      readonly station: string;
    }
  /** A route walks a leg that the rotation forbids. */
  | {
      readonly code: 'plan-leg-forbidden';
      readonly path: string;
      readonly squad: string;
      readonly leg: readonly [string, string];
    }
  | {
      readonly code: 'plan-timing-too-long';
      readonly path: string;
      readonly minutes: number;
      readonly periodMinutes: number;
    }
  /** Even at the quickest usual tempo the reps alone take longer than a slot. */
  | {
      readonly code: 'plan-reps-too-many';
      readonly path: string;
      readonly station: string;
      readonly neededSeconds: number;
      readonly slotSeconds: number;
    }
  /** The reps would fit, but not with the card to be read and the way to be walked. */
  | {
      readonly code: 'plan-slot-too-short';
      readonly path: string;
      readonly station: string;
      readonly neededSeconds: number;
      readonly slotSeconds: number;
    };

/** What a plan still lacks though it can be saved and marked by without it, and where it is put right. */
export type LooseEnd = { readonly path: string } & (
  | { readonly code: 'plan-place-blank'; readonly station: string }
  | { readonly code: 'plan-exercise-blank'; readonly station: string }
  | { readonly code: 'plan-caution-blank'; readonly station: string }
  /** The teacher's own exercise is counted, timed and cautioned in the words of this one of the library. */
  | { readonly code: 'plan-words-left-over'; readonly station: string; readonly exercise: string }
  | { readonly code: 'plan-station-on-no-route'; readonly station: string }
  | { readonly code: 'plan-class-empty' }
  | { readonly code: 'plan-squad-empty'; readonly squad: string }
);

/** What is wrong with a line of roster.csv, by line number as an editor shows it (the heading is line 1). */
export type RosterProblem =
  | { readonly code: 'roster-column-missing'; readonly column: string }
  /** Letters were lost in reading: the file is not UTF-8. The line is the first that lacks some. */
  | { readonly code: 'roster-not-utf8'; readonly line: number }
  | { readonly code: 'roster-empty' }
  | { readonly code: 'roster-line-uneven'; readonly line: number }
  /** A quote that is opened in the line and never closed takes in all that follows: nothing is read. */
  | { readonly code: 'roster-quote-open'; readonly line: number }
  | { readonly code: 'roster-field-empty'; readonly line: number; readonly column: string }
  | {
      readonly code: 'roster-id-twice';
      readonly line: number;
      readonly id: string;
      readonly firstLine: number;
    }
  | { readonly code: 'roster-squad-unknown'; readonly line: number; readonly squad: string }
  | { readonly code: 'roster-attendance-unknown'; readonly line: number; readonly value: string }
  | { readonly code: 'roster-arrival-missing'; readonly line: number }
  | { readonly code: 'roster-arrival-invalid'; readonly line: number; readonly value: string }
  /** Before the lesson's period begins, or after it ends; local times. */
  | {
      readonly code: 'roster-arrival-outside';
      readonly line: number;
      readonly value: string;
      readonly from: string;
      readonly to: string;
    }
  | { readonly code: 'roster-stills-unknown'; readonly line: number; readonly value: string }
  | { readonly code: 'roster-consent-unknown'; readonly line: number; readonly value: string };

/** Anything wrong with what the teacher prescribed. */
export type LessonProblem = PlanProblem | RosterProblem;
