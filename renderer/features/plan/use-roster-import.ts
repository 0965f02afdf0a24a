import { useEffect, useState } from 'react';
import type { CallInput } from '../../../src-core/contract/calls.ts';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Reply } from '../../../src-core/contract/reply.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { type DroppedFile, sendFiles } from '../../client/send-files.ts';

/** How a class list is read and merged; null: guess the columns, take the only class. */
export type RosterChoice = Pick<CallInput<'previewRoster'>, 'columns' | 'classId' | 'left'>;

/** A class list on its way into the lesson. */
export interface RosterImportState {
  /** Null: no list was handed over yet, or it is being read. */
  readonly preview: Extract<Reply<'previewRoster'>, { ok: true }> | null;
  readonly isReading: boolean;
  readonly problems: readonly Problem[];
  readonly choice: RosterChoice;
  readonly choose: (change: Partial<RosterChoice>) => void;
  /** Sends files of the browser and reads them. */
  readonly takeFiles: (files: readonly DroppedFile[]) => Promise<void>;
  /** Reads what lies in a folder of this machine. */
  readonly takeFolder: (token: string) => void;
  /** Writes what was previewed; true where it was written. */
  readonly merge: () => Promise<boolean>;
}

const GUESSED: RosterChoice = { columns: null, classId: null, left: 'keep' };

/** Reads a class list, shows what it would change, and merges it once the teacher has seen it. */
export function useRosterImport(desk: LessonDesk): RosterImportState {
  const [from, setFrom] = useState<string | null>(null);
  const [choice, setChoice] = useState<RosterChoice>(GUESSED);
  const [reply, setReply] = useState<Reply<'previewRoster'> | null>(null);
  const [failed, setFailed] = useState<readonly Problem[]>([]);
  const [isReading, setReading] = useState(false);
  useEffect(() => {
    if (from === null) return;
    let isWanted = true;
    setReading(true);
    void desk.client.request('previewRoster', { lesson: desk.lesson, from, ...choice }).then((read) => {
      if (!isWanted) return;
      setReading(false);
      setReply(read);
    });
    return () => {
      isWanted = false;
    };
  }, [desk, from, choice]);
  useEffect(() => {
    if (from === null || !from.startsWith('i-')) return;
    return () => void desk.client.request('closeInbox', { inbox: from });
  }, [desk, from]);
  const take = (token: string) => {
    setFailed([]);
    setChoice(GUESSED);
    setFrom(token);
  };
  const draft = reply?.ok ? reply.value.draft : null;
  return {
    preview: reply?.ok ? reply : null,
    isReading,
    problems: [...failed, ...(reply?.problems ?? [])],
    choice,
    choose: (change) => setChoice((now) => ({ ...now, ...change })),
    takeFiles: async (files) => {
      setReading(true);
      const sent = await sendFiles(desk.client, desk.lesson, files);
      setReading(false);
      if (sent.ok) take(sent.value);
      else setFailed(sent.problems);
    },
    takeFolder: take,
    merge: async () => {
      if (from === null || draft === null) return false;
      const merged = await desk.ask('mergeRoster', { from, ...choice, draft });
      setFailed(merged.ok ? [] : merged.problems);
      return merged.ok;
    },
  };
}
