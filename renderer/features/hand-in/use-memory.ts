import { useEffect, useState } from 'react';
import type { CallOutput } from '../../../src-core/contract/calls.ts';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import type { SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
import type { SheetField } from '../../../src-core/lesson/plan.ts';
import { FIELD_NAMES } from '../../text/english/hand-in.ts';

/** A destination's columns under the teacher's name for it. */
export interface Mapping {
  readonly name: string;
  readonly columns: readonly SheetColumn[];
}

/** What this machine remembers of hand-ins, and the way to remember or forget a destination's columns. */
export interface HandInMemory {
  /** Latest first. */
  readonly mappings: readonly Mapping[];
  /** Where the last one went that did not go into its own lesson; null: none did, or it is not there now. */
  readonly lastFolder: FolderRef | null;
  readonly schoolSet: FolderRef | null;
  /** Null columns: forgets it. */
  readonly save: (name: string, columns: readonly SheetColumn[] | null) => Promise<void>;
}

type Kept = Omit<HandInMemory, 'save'>;

const NOTHING: Kept = { mappings: [], lastFolder: null, schoolSet: null };

/** What this machine remembers of hand-ins. */
export function useMemory(client: DeskClient): HandInMemory {
  const [kept, setKept] = useState<Kept>(NOTHING);
  useEffect(() => {
    void client.request('readHandInMemory', {}).then((reply) => {
      if (reply.ok) setKept(readKept(reply.value));
    });
  }, [client]);
  return {
    ...kept,
    save: async (name, columns) => {
      const reply = await client.request('saveMapping', { name, columns: columns && [...columns] });
      if (reply.ok) setKept(readKept(reply.value));
    },
  };
}

/** Columns that this version does not know, from a newer one, are left out. */
function readKept({ mappings, ...folders }: CallOutput<'readHandInMemory'>): Kept {
  return {
    ...folders,
    mappings: mappings.map(({ name, columns }) => ({
      name,
      columns: columns.flatMap(({ head, field }) =>
        field in FIELD_NAMES ? [{ head, field: field as SheetField }] : [],
      ),
    })),
  };
}
