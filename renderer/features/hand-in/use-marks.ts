import { useState } from 'react';
import type { FolderRef } from '../../../src-core/contract/desk-view.ts';
import type { StepProps } from '../../client/steps.ts';
import { readPreferences } from '../../ui/preferences.ts';
import { useReplacing } from '../../ui/use-replacing.ts';
import { type Counted, countBefore } from './counts.ts';
import { getFullName, isPaper, isSlips, suggestName } from './file-names.ts';
import { type HandInChoice, useChoice } from './use-choice.ts';
import { type DraftState, useHandInDraft } from './use-hand-in-draft.ts';
import { useWriting, type Writing } from './use-writing.ts';

/** What is about to be handed in: what, under which name, where, what stands in it, and the way to write it. */
export interface Marks extends DraftState {
  readonly choice: HandInChoice;
  /** Null: there is no draft. */
  readonly counted: Counted | null;
  /** With the ending of its kind. */
  readonly fileName: string;
  /** As typed, or as suggested while nothing is. */
  readonly typedName: string;
  readonly setTypedName: (name: string) => void;
  /** Null: the lesson's own folder. */
  readonly into: FolderRef | null;
  readonly setInto: (folder: FolderRef | null) => void;
  /** Flags that hold it up; the teacher may say that it is written all the same. */
  readonly openFlags: number;
  readonly isTicked: boolean;
  readonly setTicked: (isTicked: boolean) => void;
  readonly canWrite: boolean;
  readonly writing: Writing;
  /** A file of that name was found there by the latest try. */
  readonly isThere: boolean;
  readonly write: (replace: boolean) => void;
}

/** The hand-in of a lesson as it stands now. */
export function useMarks({ lesson, state, desk }: StepProps): Marks {
  const choice = useChoice(desk);
  const { kind, what } = choice;
  const drafted = useHandInDraft(desk, what, lesson.revision);
  const { draft, isAsking } = drafted;
  const [into, setInto] = useState<FolderRef | null>(null);
  const [typed, setTypedName] = useState<string | null>(null);
  const [isTicked, setTicked] = useState(false);
  const counted = draft ? countBefore(lesson, draft.check) : null;
  const typedName = typed ?? suggestName(draft?.fileName ?? '', kind);
  const fileName = getFullName(typedName, kind);
  const replacing = useReplacing(`${into?.token ?? ''}/${fileName}`);
  const writing = useWriting(desk, replacing.note);
  // Slips hold no mark: no flag holds them up.
  const openFlags = isSlips(kind) ? 0 : (counted?.openFlags ?? 0);
  const isFree = (openFlags === 0 || isTicked) && state.waiting === 0 && !isAsking;
  const id = draft?.draft ?? null;
  const canWrite = isFree && id !== null && fileName !== '';
  const write = (replace: boolean) => {
    if (!canWrite) return;
    const place = { into: into?.token ?? null, fileName, replace };
    if (isPaper(kind)) void writing.print(place, { kind, ...readPreferences().paper });
    else void writing.write(place, { draft: id, what });
  };
  const { isThere } = replacing;
  const shown = { isThere, counted, fileName, typedName, into, openFlags, isTicked, canWrite };
  return { ...drafted, ...shown, choice, setTypedName, setInto, setTicked, writing, write };
}
