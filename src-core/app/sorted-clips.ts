import type { AsideReason } from '../contract/aside-reason.ts';
import type { TabletClock } from '../intake/tablet-clock.ts';
import type { TimedClip } from '../intake/tablet-times.ts';
import type { Squad, SquadCode } from '../lesson/plan.ts';
import type { Flag } from '../matching/flag.ts';
import type { ClipReading } from './clip-reading.ts';

/** A clip that takes no part in a route, with its time as far as known. */
export interface ClipAside {
  readonly reading: ClipReading;
  readonly squad: SquadCode | null;
  readonly reason: AsideReason;
  readonly time: TimedClip | null;
}

/** A clip that is to be matched with its squad's route. */
export interface RouteClip {
  readonly reading: ClipReading;
  readonly time: TimedClip;
}

/** One squad's clips of this lesson in the order of filming. */
export interface SquadClips {
  readonly squad: Squad;
  readonly clock: TabletClock;
  readonly clips: readonly RouteClip[];
}

/** All clips sorted into squads, and what was left out. */
export interface SortedClips {
  readonly squads: readonly SquadClips[];
  readonly aside: readonly ClipAside[];
  /** Flags of intake: about time, ownership and readability. */
  readonly flags: readonly Flag[];
}
