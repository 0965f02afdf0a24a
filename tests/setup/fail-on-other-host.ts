import { afterAll, afterEach } from 'vitest';
import { guardAgainstOtherHosts, takeAttempts } from './other-hosts.ts';

// Nothing leaves the machine: a test during which it or a process of its own tried to reach another host fails, also
// where the program bore the refusal without a word.
guardAgainstOtherHosts();

function failOnAttempts(): void {
  const attempts = takeAttempts();
  if (attempts.length > 0) throw new Error(`Another host was to be reached:\n${attempts.join('\n')}`);
}

afterEach(failOnAttempts);
afterAll(failOnAttempts);
