import { useRef, useState } from 'react';
import type { Problem } from '../../../src-core/contract/problem.ts';
import type { Progress } from '../../../src-core/contract/progress.ts';
import type { SheetOrder } from '../../../src-core/printing/sheet-order.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import { TEACHER } from '../../client/lesson-state.ts';
import type { HandInWhat } from './use-hand-in-draft.ts';

/** Under which name, and where. */
export interface WritePlace {
  readonly into: string | null;
  readonly fileName: string;
  readonly replace: boolean;
}

/** How the writing went, and the ways to begin it; problems are of the latest try. */
export interface Writing {
  readonly state: 'not-yet' | 'writing' | 'written' | 'failed';
  /** Where it lies now. */
  readonly path: string | null;
  /** How far drawing on paper has come; null: nothing is being drawn. */
  readonly progress: Progress | null;
  /** Ends the drawing; nothing is written then. */
  readonly stop: () => void;
  /** Null: not printed. */
  readonly pageCount: number | null;
  readonly problems: readonly Problem[];
  /** Writes what was previewed as `draft`. */
  readonly write: (place: WritePlace, order: { draft: string; what: HandInWhat }) => Promise<void>;
  readonly print: (place: WritePlace, order: SheetOrder) => Promise<void>;
}

type Done = Pick<Writing, 'state' | 'path' | 'pageCount' | 'problems'>;

const NOT_YET: Done = { state: 'not-yet', path: null, pageCount: null, problems: [] };

/** Writes what is handed in, and says how that went; `note` hears what each try came to. */
export function useWriting(desk: LessonDesk, note: (problems: readonly Problem[]) => void): Writing {
  const [done, setDone] = useState(NOT_YET);
  const [progress, setProgress] = useState<Progress | null>(null);
  const stopper = useRef<AbortController | null>(null);
  // The draft has its open flags in it, and the teacher has said that it may be written so.
  const getRest = () => ({ evenWithOpenFlags: true, who: TEACHER });
  return {
    ...done,
    progress,
    stop: () => stopper.current?.abort(),
    write: async (place, order) => {
      setDone({ ...NOT_YET, state: 'writing' });
      const reply = await desk.ask('writeHandIn', { ...place, ...order, ...getRest() });
      const { problems } = reply;
      note(problems);
      if (reply.ok) setDone({ state: 'written', path: reply.value.path, pageCount: null, problems });
      else setDone({ ...NOT_YET, state: 'failed', problems });
    },
    print: async (place, order) => {
      setDone({ ...NOT_YET, state: 'writing' });
      const controller = new AbortController();
      stopper.current = controller;
      const options = { signal: controller.signal, onProgress: setProgress };
      const reply = await desk.ask('printSheet', { ...place, ...order, ...getRest() }, options);
      setProgress(null);
      if (reply.problems.some(({ code }) => code === 'call-cancelled')) return setDone(NOT_YET);
      const { problems } = reply;
      note(problems);
      if (reply.ok) {
        const { path, pageCount } = reply.value;
        setDone({ state: 'written', path, pageCount, problems });
      } else setDone({ ...NOT_YET, state: 'failed', problems });
    },
  };
}
