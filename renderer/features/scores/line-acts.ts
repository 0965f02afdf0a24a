import type { JournalAct } from '../../../src-core/marking/journal-event.ts';
import type { Selection } from './selection.ts';

/** What the lines of the table do. */
export interface LineActs {
  readonly select: (selection: Selection) => void;
  readonly toggle: (squad: string) => void;
  readonly adjust: (selection: Selection) => void;
  readonly decide: (act: JournalAct) => void;
  readonly show: (clip: string) => void;
}
