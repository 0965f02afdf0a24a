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

/** The longest word, in characters, that stands whole in the width of a card; measured on printed exercises' names. */
export const LONGEST_WORD = 24;

/**
 * The longest text that a card's code may hold, in characters: version 10 of the symbol at correction level M holds
 * 213 bytes (ISO/IEC 18004, 7.4.10, table 7), and its 57 modules on 38 mm of paper are two thirds of a millimetre
 * wide, about as small as a tablet reads across an arm's length.
 */
export const LONGEST_CODE_TEXT = 213;
