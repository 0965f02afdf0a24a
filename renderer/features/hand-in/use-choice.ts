import { useMemo, useState } from 'react';
import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import type { SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { useDraft } from '../../storage/use-draft.ts';
import { changePreferences, type HandInKind, usePreferences } from '../../ui/preferences.ts';
import { isPaper } from './file-names.ts';
import type { HandInWhat } from './use-hand-in-draft.ts';
import { type HandInMemory, type Mapping, useMemory } from './use-memory.ts';

/** The school's set that a OneRoster hand-in is built on. */
export interface SchoolChoice {
  /** Of a folder that was chosen, or of what was uploaded. */
  readonly token: string;
  /** Null: the class with most of the pupils. */
  readonly classId: string | null;
  readonly category: string | null;
}

/** What is to be handed in, and the ways to choose otherwise. */
export interface HandInChoice {
  /** Of what is printed: the sheet whose marks it shows. */
  readonly what: HandInWhat;
  readonly kind: HandInKind;
  readonly version: '1.1' | '1.2';
  readonly memory: HandInMemory;
  /** The destination whose columns are in force; null: the plan's, or loose ones. */
  readonly mapping: Mapping | null;
  /** Null columns: the plan's. */
  readonly useColumns: (columns: readonly SheetColumn[] | null, mapping: string | null) => void;
  readonly setKind: (kind: HandInKind) => void;
  readonly setVersion: (version: '1.1' | '1.2') => void;
  readonly setSchool: (school: Partial<SchoolChoice>) => void;
}

/** The choice as it was left: the kind and version on this machine, the columns in this lesson. */
export function useChoice({ client, lesson }: LessonDesk): HandInChoice {
  const memory = useMemory(client);
  const { handIn } = usePreferences();
  const { kind, version } = handIn;
  const chosen = useDraft(`mapping:${lesson}`);
  const mapping = memory.mappings.find(({ name }) => name === chosen.text) ?? null;
  const [loose, setLoose] = useState<readonly SheetColumn[] | null>(null);
  const [picked, setPicked] = useState<SchoolChoice | null>(null);
  const columns = mapping?.columns ?? loose;
  const school = picked ?? findKnownSet(memory.schoolSet);
  const { token = null, classId = null, category = null } = school ?? {};
  const what = useMemo<HandInWhat>(
    () =>
      kind === 'oneroster'
        ? { kind, version, school: token, classId, category }
        : { kind: kind === 'xlsx' ? kind : 'csv', columns: isPaper(kind) ? null : columns && [...columns] },
    [kind, version, columns, token, classId, category],
  );
  return {
    what,
    kind,
    version,
    memory,
    mapping,
    useColumns: (used, name) => {
      setLoose(used);
      if (name === null) chosen.drop();
      else chosen.write(name);
    },
    setKind: (next) => changePreferences({ handIn: { ...handIn, kind: next } }),
    setVersion: (next) => changePreferences({ handIn: { ...handIn, version: next } }),
    setSchool: (change) =>
      setPicked((now) => ({ token: '', classId: null, category: null, ...(now ?? school), ...change })),
  };
}

function findKnownSet(known: FolderRef | null): SchoolChoice | null {
  return known && { token: known.token, classId: null, category: null };
}
