/** The most characters that each text of a station may have to stand on a printed card at a readable size. */
export const CARD_LIMITS = {
  exercise: 40,
  place: 40,
  countsAs: 120,
  easier: 120,
  harder: 120,
  caution: 120,
  transit: 120,
  equipment: 120,
  clue: 140,
} as const;

/** The most characters of what stands in the heads of cards and sheets. */
export const HEAD_LIMITS = { title: 60, className: 40, school: 120 } as const;

/** The most characters of what tells a squad apart. */
export const SQUAD_LIMITS = { name: 24, pinnie: 24, tablet: 24 } as const;

/**
 * The widest word of each text, in ems: what the narrowest of its columns on paper holds in the smallest type that is
 * set there. A hyphen between letters parts a word.
 */
export const WORD_EMS = {
  /** 138 mm at 35 points, on the station card. */
  exercise: 11.1,
  /** 31.5 mm at 6 points, on the answer key; on its card it is read from further off, and has more room. */
  place: 14.8,
  /** 138 mm at 11 points. */
  countsAs: 35,
  /** 92 mm at 6 points. */
  easier: 43,
  harder: 43,
  /** 86 mm at 12 points, on the briefing; hardly more than on the card. */
  caution: 20.3,
  /** 140 mm at 8 points, on the list of the squad. */
  transit: 49,
  /** 37 mm at 6 points, on the answer key. */
  equipment: 17.4,
  /** 62 mm at 7.5 points, on the answer key. */
  clue: 23.4,
  /** 90 mm at 9 points, on the station card, as the next one. */
  title: 28,
  /** 43 mm at 8 points. */
  className: 15.2,
  /** 70 mm at 6 points. */
  school: 33,
  /** 18.5 mm at 6 points, over a column of the route key. */
  name: 8.7,
  /** 53 mm at 6 points, on the tablet's label, as the next one at 7. */
  pinnie: 25,
  tablet: 21.4,
  /** 86 mm at 12 points. */
  briefing: 20.3,
} as const;
