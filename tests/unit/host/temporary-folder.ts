import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A new empty folder that goes away with the test. */
export function makeTemporaryFolder(): string {
  const folder = mkdtempSync(path.join(tmpdir(), 'routemark-test-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}
