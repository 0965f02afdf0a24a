import { useEffect, useState } from 'react';
import type { DeskClient } from '../../../src-core/contract/desk-client.ts';
import type { SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
import type { SheetField } from '../../../src-core/lesson/plan.ts';
import { FIELD_NAMES } from '../../text/english/hand-in.ts';

/** A destination's columns under the teacher's name for it. */
export interface Mapping {
  readonly name: string;
  readonly columns: readonly SheetColumn[];
}

/** Destinations remembered on this machine, latest first, and the way to remember or forget one. */
export interface Mappings {
  readonly list: readonly Mapping[];
  /** Null columns: forgets it. */
  readonly save: (name: string, columns: readonly SheetColumn[] | null) => Promise<void>;
}

/** The columns that this machine remembers. */
export function useMappings(client: DeskClient): Mappings {
  const [list, setList] = useState<readonly Mapping[]>([]);
  useEffect(() => {
    void client.request('readMappings', {}).then((reply) => {
      if (reply.ok) setList(readMappings(reply.value.mappings));
    });
  }, [client]);
  return {
    list,
    save: async (name, columns) => {
      const reply = await client.request('saveMapping', { name, columns: columns && [...columns] });
      if (reply.ok) setList(readMappings(reply.value.mappings));
    },
  };
}

/** Columns that this version does not know, from a newer one, are left out. */
function readMappings(
  kept: readonly { readonly name: string; readonly columns: readonly { head: string; field: string }[] }[],
): readonly Mapping[] {
  return kept.map(({ name, columns }) => ({
    name,
    columns: columns.flatMap(({ head, field }) =>
      field in FIELD_NAMES ? [{ head, field: field as SheetField }] : [],
    ),
  }));
}
