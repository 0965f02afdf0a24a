import type { ExitCode } from './terminal.ts';

/**
 * Lets a command run, and keeps how it ended for the program's own end. A command's module is imported when it is asked
 * for, so that a start reads no more than it needs.
 */
export type Run = <Input extends unknown[]>(
  work: (...input: Input) => Promise<ExitCode>,
) => (...input: Input) => Promise<void>;
