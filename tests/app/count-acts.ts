import type { Locator, Page } from 'playwright-core';

/** Counts what the teacher does in each step: a key, a click, a text that is typed, a file that is chosen. */
export function openCountingHand(page: Page) {
  const counts = new Map<string, number>();
  let step = '';
  const count = () => counts.set(step, (counts.get(step) ?? 0) + 1);
  return {
    counts,
    begin: (name: string) => {
      step = name;
    },
    press: async (key: string) => {
      count();
      await page.keyboard.press(key);
    },
    click: async (target: Locator) => {
      count();
      await target.click();
    },
    type: async (text: string) => {
      count();
      // The first sign is pressed, for it opens the field; the rest comes at once.
      await page.keyboard.type(text.slice(0, 1));
      await page.keyboard.insertText(text.slice(1));
    },
    choose: async (input: Locator, file: string) => {
      count();
      await input.setInputFiles(file);
    },
  };
}
