import type { Locator, Page } from 'playwright-core';

/** Further than this nobody goes by Tab. */
const MOST_TABS = 8;

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
    /** By Tab, as often as it takes: each counts. */
    tabTo: async (page: Page, target: Locator) => {
      const isThere = () => target.evaluate((element) => element === document.activeElement);
      for (let tabs = 0; !(await isThere()); tabs += 1) {
        if (tabs === MOST_TABS) throw new Error('too far for Tab');
        done.push('key Tab');
        await page.keyboard.press('Tab');
      }
    },
    /** A choice of a list: a press on it, the key of the choice, Enter. */
    pick: async (page: Page, list: Locator, key: string) => {
      done.push('click', `key ${key}`, 'key Enter');
      await list.click();
      await page.keyboard.press(key);
      await page.keyboard.press('Enter');
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
