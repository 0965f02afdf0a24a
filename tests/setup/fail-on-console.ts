import { afterAll, afterEach } from 'vitest';

// A program that talks on the console while it is tested either forgot a debugging line or swallowed a failure.
// Every call is kept with the place it came from, and fails the test during which it was made.
const METHODS = ['log', 'info', 'warn', 'error', 'debug', 'trace', 'dir', 'table'] as const;

const stray: string[] = [];

for (const method of METHODS) {
  console[method] = (...values: unknown[]) => {
    const place = new Error().stack?.split('\n')[2]?.trim() ?? 'unknown place';
    stray.push(`console.${method}(${values.map(String).join(', ')}) ${place}`);
  };
}

function failOnStrayCalls(): void {
  const calls = stray.splice(0);
  if (calls.length > 0) throw new Error(`Stray console call:\n${calls.join('\n')}`);
}

afterEach(failOnStrayCalls);
afterAll(failOnStrayCalls);
