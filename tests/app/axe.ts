import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const AXE = createRequire(import.meta.url).resolve('axe-core/axe.min.js');

interface Violation {
  readonly impact: string | null;
  readonly id: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** Resolves when colours that are on their way have arrived: halfway there they are nobody's choice. */
const SETTLED = `Promise.all(document.getAnimations()
  .filter(({ effect }) => effect.getComputedTiming().endTime < Infinity)
  .map(({ finished }) => finished.catch(() => {}))).then(() => {})`;

/** Every serious or critical finding of axe-core on what the page shows now, as a sentence each. */
export async function findBarriers(page: Page): Promise<readonly string[]> {
  await page.evaluate(SETTLED);
  await page.evaluate(await readFile(AXE, 'utf8'));
  const violations = await page.evaluate<readonly Violation[]>(
    'axe.run(document).then(({ violations }) => violations)',
  );
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(
      ({ impact, id, nodes }) =>
        `${impact} ${id}: ${nodes.map(({ html }) => html.slice(0, 120)).join(' | ')}`,
    );
}
