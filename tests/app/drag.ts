import type { Locator, Page } from 'playwright-core';

/** Drags as a mouse does: with pressure, without which a press counts as one by a machine for the blind. */
export async function drag(page: Page, from: Locator, to: Locator): Promise<void> {
  await from.scrollIntoViewIfNeeded();
  const [start, end] = [await from.boundingBox(), await to.boundingBox()];
  if (!start || !end) throw new Error('both are on the sheet');
  const session = await page.context().newCDPSession(page);
  const middle = (box: typeof start) => ({ x: box.x + box.width / 2, y: box.y + box.height / 2 });
  const send = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', point: { x: number; y: number }) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      ...point,
      button: 'left',
      buttons: type === 'mouseReleased' ? 0 : 1,
      clickCount: 1,
      force: 0.5,
    });
  const [first, last] = [middle(start), middle(end)];
  await send('mousePressed', first);
  for (let step = 1; step <= 10; step += 1) {
    const share = step / 10;
    await send('mouseMoved', {
      x: first.x + (last.x - first.x) * share,
      y: first.y + (last.y - first.y) * share,
    });
  }
  await send('mouseReleased', last);
}
