import { describe, expect, test } from 'vitest';
import { upgradeContent } from '../../../src-core/lesson-file/upgrade.ts';

const steps = {
  1: (content: Readonly<Record<string, unknown>>) => ({ ...content, pinnie: content.bib, bib: undefined }),
  2: (content: Readonly<Record<string, unknown>>) => ({ ...content, pinnies: [content.pinnie] }),
};

describe('an older file', () => {
  test('goes through every step from its own version on', () => {
    expect(upgradeContent({ version: 1, bib: 'teal' }, 3, steps)).toMatchObject({
      version: 3,
      pinnies: ['teal'],
    });
    expect(upgradeContent({ version: 2, pinnie: 'plum' }, 3, steps)).toMatchObject({
      version: 3,
      pinnies: ['plum'],
    });
  });

  test('of the newest version is left as it is', () => {
    const content = { version: 3 };
    expect(upgradeContent(content, 3, steps)).toBe(content);
  });

  test('is not guessed at where a step is missing', () => {
    expect(upgradeContent({ version: 1 }, 4, steps)).toBeNull();
  });
});
