import { useState } from 'react';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { PackOrder } from '../../../src-core/printing/pack.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';

/** How it stands with the print pack. */
export interface PrintPack {
  readonly state: 'idle' | 'writing' | 'written' | 'failed';
  /** The files of the last pack. */
  readonly paths: readonly string[];
  readonly pageCount: number;
  /** Why nothing was written, or which pages were left out. */
  readonly problems: readonly Problem[];
  /** Writes the pack into the lesson's own `print` folder; over an earlier one only where `replace` says so. */
  readonly write: (order: PackOrder, replace: boolean) => Promise<void>;
}

const IDLE: Omit<PrintPack, 'write'> = { state: 'idle', paths: [], pageCount: 0, problems: [] };

/** Prints the lesson's pack into files. */
export function usePrintPack({ client, lesson }: Pick<LessonDesk, 'client' | 'lesson'>): PrintPack {
  const [pack, setPack] = useState(IDLE);
  const write = async (order: PackOrder, replace: boolean) => {
    setPack({ ...IDLE, state: 'writing' });
    const reply = await client.request('printPack', { lesson, ...order, into: null, replace });
    const { problems } = reply;
    setPack(
      reply.ok ? { ...reply.value, state: 'written', problems } : { ...IDLE, state: 'failed', problems },
    );
  };
  return { ...pack, write };
}
