import { constants, setPriority } from 'node:os';

/**
 * A third of another program's share where both want the processor (weight 335 of 1024 in Linux's table of nice levels,
 * from memory): the window goes first, and a machine with much else to do still gets clips watched. Windows has classes
 * instead, of which this is the one below the usual.
 */
const GIVING_WAY = process.platform === 'win32' ? constants.priority.PRIORITY_BELOW_NORMAL : 5;

/** Lets every other program of the machine go before a process; for work that nobody waits for. */
export function letProcessGiveWay(pid: number): void {
  try {
    setPriority(pid, GIVING_WAY);
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
