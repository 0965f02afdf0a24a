import type { Locator, Page } from 'playwright-core';

/** Counts what the teacher does: a key, a click, a drop; a text that is typed is one. */
export function openHand() {
  const done: string[] = [];
  return {
    done,
    press: async (page: Page, key: string) => {
      done.push(`key ${key}`);
      await page.keyboard.press(key);
    },
    click: async (target: Locator) => {
      done.push('click');
      await target.click();
    },
    /** By Tab or by a click: one either way, at best. */
    focus: async (target: Locator) => {
      done.push('focus');
      await target.focus();
    },
    type: async (page: Page, text: string) => {
      done.push('text');
      await page.keyboard.type(text);
    },
    drop: async (page: Page, files: readonly string[]) => {
      done.push('drop');
      const session = await page.context().newCDPSession(page);
      // On the head of the screen: what falls on a tray is given to that tray's squad.
      const data = { items: [], files: [...files], dragOperationsMask: 1 };
      for (const type of ['dragEnter', 'dragOver', 'drop'] as const)
        await session.send('Input.dispatchDragEvent', { type, x: 640, y: 75, data });
    },
  };
}

/** A hand that counts. */
export type Hand = ReturnType<typeof openHand>;
