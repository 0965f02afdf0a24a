import { readdirSync, statSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import {
  EMPTY_NAMES,
  MAX_COMPONENT_LINES,
  MAX_FILE_LINES,
  NAME_PATTERN,
  TOP_LEVEL,
  UNTRACKED,
} from './rules.ts';
import { listCode, listFiles, ROOT, readTree, type SourceTree } from './source-tree.ts';

const FOLDERS = TOP_LEVEL.filter((name) => statSync(ROOT + name, { throwIfNoEntry: false })?.isDirectory());

const tree = readTree(...FOLDERS);

function findLong(files: SourceTree): string[] {
  return listCode(files).flatMap(([path, text]) => {
    const lines = text.replace(/\n$/, '').split('\n').length;
    const limit =
      path.endsWith('.tsx') && path.startsWith('renderer/') ? MAX_COMPONENT_LINES : MAX_FILE_LINES;
    return lines > limit ? [`${path}: ${lines} lines`] : [];
  });
}

function findMisnamed(paths: readonly string[]): string[] {
  return paths.filter((path) =>
    path
      .split('/')
      .slice(1)
      .some((part) => !NAME_PATTERN.test(part) || EMPTY_NAMES.includes(part.split('.')[0] ?? '')),
  );
}

/** Files beside the tests that name the material which stands next to a checkout on some machines. */
function findOutsideNames(files: SourceTree): string[] {
  return [...files]
    .filter(([path, text]) => !path.startsWith('tests/') && /\.\.\/shared\b/.test(text))
    .map(([path]) => path);
}

describe('the layout', () => {
  test('has nothing at the top but what belongs there', () => {
    const present = readdirSync(ROOT).filter((name) => !UNTRACKED.includes(name));
    expect(present.filter((name) => !TOP_LEVEL.includes(name) && !name.endsWith('.tsbuildinfo'))).toEqual([]);
  });

  test('keeps files short', () => {
    expect(findLong(tree)).toEqual([]);
    const lines = (count: number) => 'x;\n'.repeat(count);
    expect(findLong(new Map([['src-core/lesson/a.ts', lines(300)]]))).toEqual([]);
    expect(findLong(new Map([['src-core/lesson/a.ts', lines(301)]]))).toHaveLength(1);
    expect(findLong(new Map([['renderer/ui/a.tsx', lines(151)]]))).toHaveLength(1);
  });

  test('names files and folders after what they hold, in kebab-case', () => {
    expect(findMisnamed(FOLDERS.flatMap(listFiles))).toEqual([]);
    expect(findMisnamed(['src-core/lesson/card-text.ts', 'tests/unit/media/mvhd.test.ts'])).toEqual([]);
    for (const bad of [
      'CardText.ts',
      'card_text.ts',
      'utils.ts',
      'helpers/card.ts',
      'manager.test.ts',
      'shared/card.ts',
    ]) {
      expect(findMisnamed([`src-core/lesson/${bad}`]), bad).toHaveLength(1);
    }
  });

  test('depends on nothing that stands beside the repository, tests aside', () => {
    expect(findOutsideNames(readTree(...FOLDERS, 'package.json', 'README.md', 'DEVELOPERS.md'))).toEqual([]);
    expect(findOutsideNames(new Map([['fixtures/a.ts', "open('../shared/x.mp4')"]]))).toEqual([
      'fixtures/a.ts',
    ]);
    expect(findOutsideNames(new Map([['tests/a.ts', "open('../shared/x.mp4')"]]))).toEqual([]);
  });
});
