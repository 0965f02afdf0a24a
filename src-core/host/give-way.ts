import { constants, setPriority } from 'node:os';

const { PRIORITY_BELOW_NORMAL } = constants.priority;

/** Lets every other program of the machine go before a process; for work that nobody waits for. */
export function letProcessGiveWay(pid: number): void {
  try {
    setPriority(pid, PRIORITY_BELOW_NORMAL);
  } catch {
    // It has ended, or the system does not allow it: then it runs as the others do.
  }
}

/**
 * The same for the thread that calls it, for good, and for what it starts. On Linux alone a thread has a priority of its
 * own; elsewhere this would slow the whole program, so nothing is done.
 */
export function letThreadGiveWay(): void {
  if (process.platform === 'linux') letProcessGiveWay(0);
}
