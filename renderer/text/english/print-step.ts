import type { PackOrder } from '../../../src-core/printing/pack.ts';
import { count } from './amounts.ts';

/** The print pack on the Plan sheet. */
export const PRINT = {
  head: 'On paper',
  sentence: ['Print', 'on', ',', '.'],
  partsLabel: 'Parts of the print pack',
  allParts: 'the whole pack',
  noParts: 'nothing yet',
  paperLabel: 'Paper',
  papers: { a4: 'A4', letter: 'Letter' } satisfies Record<PackOrder['paper'], string>,
  inkLabel: 'Colour',
  inks: { colour: 'in colour', grey: 'in grey' },
  write: 'Make the pages (PDF)',
  writing: 'Laying out pages…',
  written: (pages: number, paths: readonly string[]) =>
    `${count(pages, 'page')} in ${count(paths.length, 'file')}: ${paths.join(', ')}. Print at full size, for the codes are read by their width.`,
  failed: 'No page was written',
  incomplete: 'Some pages are left out',
  replace: 'Write over the earlier pages',
} as const;
