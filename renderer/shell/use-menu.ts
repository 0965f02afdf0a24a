import { useEffect } from 'react';
import type { MenuCommand } from '../../src-core/contract/events.ts';
import type { LessonDesk } from '../client/lesson-desk.ts';
import type { Step } from '../client/steps.ts';
import { runKey } from '../ui/keys/use-keys.ts';

interface MenuTargets {
  readonly go: (step: Step) => void;
  readonly showKeys: () => void;
  readonly openLesson: () => void;
}

/** Does what the shell's menu asks for; the menu says nothing that a key or button of the page does not. */
export function useMenu(desk: LessonDesk, { go, showKeys, openLesson }: MenuTargets): void {
  useEffect(() => {
    const run: Readonly<Record<MenuCommand, () => unknown>> = {
      'open-lesson': openLesson,
      'bring-in': () => go('bring-in'),
      undo: desk.undo,
      redo: desk.redo,
      'next-flag': () => runKey('next-flag'),
      keys: showKeys,
      'hand-in': () => go('hand-in'),
    };
    return desk.client.subscribe((event) => {
      if (event.kind === 'menu') run[event.command]();
    });
  }, [desk, go, showKeys, openLesson]);
}
