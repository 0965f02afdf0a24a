import { useEffect, useState } from 'react';
import { type ClockLook, findClockJump } from '../../../src-core/lesson/class-clock.ts';

/** The wall clock, told anew each second as soon as it turns. */
export interface WallClock {
  readonly nowMs: number;
  /** By how much the clock jumped, or the machine slept, since that was last seen; null: not at all. */
  readonly jumpMs: number | null;
  /** The jump was seen. */
  readonly dismissJump: () => void;
}

const SECOND_MS = 1000;

/** Follows the machine's clock. The time is looked up each time, never added up, so that a sleep changes nothing. */
export function useWallClock(): WallClock {
  const [nowMs, setNow] = useState(Date.now);
  const [jumpMs, setJump] = useState<number | null>(null);
  useEffect(() => {
    let timer = 0;
    let before = look();
    const tick = () => {
      clearTimeout(timer);
      const now = look();
      const jump = findClockJump(before, now);
      if (jump !== null) setJump(jump);
      before = now;
      setNow(now.wallMs);
      timer = window.setTimeout(tick, SECOND_MS - (now.wallMs % SECOND_MS) + 1);
    };
    tick();
    document.addEventListener('visibilitychange', tick);
    return () => {
      clearTimeout(timer);
      document.removeEventListener('visibilitychange', tick);
    };
  }, []);
  return { nowMs, jumpMs, dismissJump: () => setJump(null) };
}

function look(): ClockLook {
  return { wallMs: Date.now(), steadyMs: performance.now() };
}
