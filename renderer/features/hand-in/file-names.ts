import { SHEET_NAMES } from '../../text/english/grade-paper.ts';
import type { HandInKind, PaperKind } from '../../ui/preferences.ts';

/** How the file of a kind must end to be known for what it is; null: any name will do. */
const ENDINGS: Readonly<Record<HandInKind, string | null>> = {
  csv: null,
  xlsx: '.xlsx',
  oneroster: '.zip',
  'grade-sheet': '.pdf',
  'squad-slips': '.pdf',
  'pupil-slips': '.pdf',
};

const KNOWN = /\.(csv|xlsx|zip|pdf)$/i;

/** Whether a kind is printed. */
export function isPaper(kind: HandInKind): kind is PaperKind {
  return kind in SHEET_NAMES;
}

/** Whether a kind is slips, which hold no mark. */
export function isSlips(kind: HandInKind): kind is 'squad-slips' | 'pupil-slips' {
  return kind === 'squad-slips' || kind === 'pupil-slips';
}

/** A typed name with the ending that the kind asks for, in the place of another kind's. */
export function getFullName(typed: string, kind: HandInKind): string {
  const ending = ENDINGS[kind];
  const name = typed.trim();
  if (ending === null || name === '' || name.endsWith(ending)) return name;
  return `${name.replace(KNOWN, '')}${ending}`;
}

/** The name to begin with: that of the lesson's sheet, with what is printed in it where something is. */
export function suggestName(sheet: string, kind: HandInKind): string {
  const name = sheet.replace(KNOWN, '');
  return isPaper(kind) ? `${name} ${SHEET_NAMES[kind].file}.pdf` : sheet;
}
