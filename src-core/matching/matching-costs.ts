/**
 * What each part of an explanation of a squad's clips costs; the explanation with the least sum is proposed.
 * One unit is the margin below which two explanations are too near to choose. Values are judgement, set by the
 * comparisons named beside them, not by measurement; change one and the tests of those comparisons tell.
 */
export const matchingCosts = {
  /** A slot without any clip. Dearer than a doubtful retake, so that a free slot is filled before a retake is guessed. */
  missingSlot: 4,

  /** A clip that belongs to no slot. With the slot it leaves empty (3 + 4) it loses to a fitting guess (1). */
  extra: 3,

  /**
   * A counting clip filmed outside the order. Dear, because it accuses: a guess that makes a known clip out of
   * order (6 + 1) ties with "extra, and a slot missing" (3 + 4), so it ends as unplaced and never as a guess.
   */
  outOfOrder: 6,

  /** A guessed station at a free slot, before time and looks are weighed. Knowing is cheaper than guessing. */
  inferred: 1,

  /** Another station filmed in a free slot's time. Between a quick retake with a gap (1 + 4) and a late one (4 + 4). */
  wrongPlace: 6,

  /** The same slot again, at once: the usual second try. */
  retakeSoon: 1,

  /** The same slot again after a whole slot's time: hardly a second try. With no gap in the route it still is one. */
  retakeLate: 4,

  /** The same slot again, and no usable times: with a gap it ties with a wrong place (2 + 4 against 6), so it is unplaced. */
  retakeUntimed: 2,

  /** The same slot again after other stations: the squad came back. */
  retakeReturned: 3,

  /**
   * The take that counts is not the one the plan's rule names. Possible only where the squad came back (filmed
   * at one go, the rule binds); cheaper than an order error, so that coming back to a station is none.
   */
  againstRule: 2,

  /** A guess or wrong place a whole slot's time (or more) away from where its slot was due; less in proportion. */
  offPace: 4,

  /** Largest weight of a look-alike score for or against a station, on the scale of log-odds: 6.5 is 665 to 1. */
  looksLimit: 6.5,
} as const;

/** Two explanations of one clip whose costs differ by less than this are both named, and the clip stays unplaced. */
export const CHOICE_MARGIN = 1;

/** Share of the squad's pace up to which a second take came at once, and from which it came late. */
export const RETAKE_GAP_SHARES = { soon: 0.4, late: 0.9 } as const;

/** Fewest spans between known clips before a squad's pace is trusted; a median of one would be an anecdote. */
export const FEWEST_PACE_SPANS = 2;

/** A start this much less certain than the squad's best ones tells order but no pace, in seconds. */
export const TIME_SLACK_SECONDS = 60;
