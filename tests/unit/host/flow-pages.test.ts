import { describe, expect, test } from 'vitest';
import { measureHeight } from '../../../src-core/host/pdf/fit-text.ts';
import { type Block, flowPages } from '../../../src-core/host/pdf/flow.ts';
import { type } from '../../../src-core/host/pdf/marks.ts';

/** A block that leaves its name, and where it stands, as its mark. */
const block = (name: string, h: number): Block => ({
  h,
  lay: (y) => [{ kind: 'plate', letter: `${name} ${y}`, box: { x: 0, y, w: 1, h }, cutMm: 0 }],
});

const flow = (...of: Parameters<typeof flowPages>) =>
  flowPages(...of).map((page) => page.map((mark) => (mark.kind === 'plate' ? mark.letter : '')));

describe('blocks on pages', () => {
  test('stand one under the other, and none is cut', () => {
    const blocks = [block('a', 30), block('b', 30), block('c', 50)];
    expect(flow([{ head: null, blocks }], { top: 10, bottom: 100 })).toEqual([['a 10', 'b 40'], ['c 10']]);
  });

  test('have their head said again on the next page, and never a head alone', () => {
    const rows = { head: block('head', 10), blocks: [block('a', 60), block('b', 60)] };
    const late = { head: block('late', 10), blocks: [block('c', 25)] };
    expect(flow([rows, late], { top: 0, bottom: 100 })).toEqual([
      ['head 0', 'a 10'],
      ['head 0', 'b 10'],
      ['late 0', 'c 10'],
    ]);
  });

  test('that are higher than a page have one of their own', () => {
    expect(flow([{ head: null, blocks: [block('a', 300)] }], { top: 0, bottom: 100 })).toEqual([['a 0']]);
  });
});

test('a text takes lines as it needs them once its type cannot get smaller', () => {
  const setting = type('sans', 10, 8, 1.2);
  const line = (size: number) => (size * 1.2 * 25.4) / 72;
  expect(measureHeight('Net loft', 50, setting)).toBeCloseTo(line(10), 1);
  expect(measureHeight('Net loft '.repeat(40), 50, setting)).toBeGreaterThan(4 * line(8));
  expect(measureHeight(' ', 50, setting)).toBe(0);
});
