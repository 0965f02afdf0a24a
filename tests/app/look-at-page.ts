import type { Page } from 'playwright-core';

/** Where Tab has come to: what it is, and whether that can be seen. */
interface Stop {
  readonly name: string;
  readonly isVisible: boolean;
}

/** What Tab reaches and what it leaves out. */
export interface TabWalk {
  /** Names of stops whose focus cannot be seen. */
  readonly unseen: readonly string[];
  /** Names of controls that can be pressed and were never reached. */
  readonly missed: readonly string[];
  /** Tab left the page again instead of going round within a part of it. */
  readonly isFree: boolean;
}

/** More stops than any screen has. */
const MOST_STOPS = 250;

/** Goes through the whole page with Tab. */
export async function walkByTab(page: Page): Promise<TabWalk> {
  await page.evaluate(MARK);
  const unseen: string[] = [];
  let isFree = false;
  for (let at = 0; at < MOST_STOPS && !isFree; at += 1) {
    await page.keyboard.press('Tab');
    await page.evaluate(PAINTED);
    const stop = await page.evaluate<Stop | null>(LOOK);
    isFree = stop === null;
    if (stop && !stop.isVisible) unseen.push(stop.name);
  }
  return { unseen, missed: await page.evaluate<string[]>(MISSED), isFree };
}

/** Text that is cut off where nothing gives the rest: no scrolling, no title. */
export function findCutText(page: Page): Promise<readonly string[]> {
  return page.evaluate<string[]>(CUT);
}

/** By how many pixels the page is wider than its window. */
export function measureOverhang(page: Page): Promise<number> {
  return page.evaluate<number>('document.documentElement.scrollWidth - innerWidth');
}

const NAME = `const name = (e) => (e.getAttribute('aria-label') || e.textContent || e.tagName).trim().slice(0, 60);`;

// A list scrolls to the item that it gave the focus to a frame later, and from there back to itself where Tab has gone
// on within that frame: nobody's hand is that quick.
const PAINTED =
  'new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done))))';

// A ticket that arrows reach and a radio button of a chosen group are no stops of their own.
const MARK = `(() => {
  // From the very top: a blurred element would be where Tab goes on.
  document.body.tabIndex = -1;
  document.body.focus();
  document.body.removeAttribute('tabindex');
  for (const e of document.querySelectorAll('[data-reached]')) delete e.dataset.reached;
})()`;

const LOOK = `(() => {
  ${NAME}
  const e = document.activeElement;
  // A field for a day holds several stops: its day, month and year, and its calendar.
  if (!e || e === document.body || (e.dataset.reached && e.type !== 'date')) return null;
  e.dataset.reached = 'yes';
  const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(e);
  const { width, height, top, bottom } = e.getBoundingClientRect();
  const isMarked = (outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2) || boxShadow !== 'none';
  return { name: name(e), isVisible: isMarked && width > 0 && height > 0 && bottom > 0 && top < innerHeight };
})()`;

const MISSED = `(() => {
  ${NAME}
  const pressed = 'button, a[href], input, select, textarea, [tabindex="0"]';
  return [...document.querySelectorAll(pressed)]
    .filter((e) => !e.disabled && e.tabIndex >= 0 && !e.dataset.reached && e.checkVisibility())
    .filter((e) => e.type !== 'radio')
    .map(name);
})()`;

const CUT = `(() => {
  const isHidden = (e) => e.closest('.vh, [aria-hidden=true], .skip, svg');
  const own = (e) => [...e.childNodes].some((n) => n.nodeType === 3 && n.textContent.trim() !== '');
  return [...document.querySelectorAll('main *, header *, footer *')]
    .filter((e) => own(e) && !isHidden(e) && e.checkVisibility() && !e.title)
    .filter((e) => {
      const { overflowX, overflowY } = getComputedStyle(e);
      const isCutWide = /hidden|clip/.test(overflowX) && e.scrollWidth > e.clientWidth + 1;
      return isCutWide || (/hidden|clip/.test(overflowY) && e.scrollHeight > e.clientHeight + 2);
    })
    .map((e) => e.tagName + '.' + e.className + ': ' + e.textContent.slice(0, 60));
})()`;
