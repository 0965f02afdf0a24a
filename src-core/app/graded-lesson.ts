import type { ClipsProblem } from '../contract/clips-problem.ts';
import type { TabletClock } from '../intake/tablet-clock.ts';
import type { Squad } from '../lesson/plan.ts';
import type { FlagAnswer } from '../marking/decisions.ts';
import type { LessonScore } from '../marking/points.ts';
import type { Proposal } from '../marking/proposal.ts';
import type { ClipAssignment } from '../matching/assignment.ts';
import type { Flag, FlagKey } from '../matching/flag.ts';
import type { SquadMatch } from '../matching/match-squad.ts';
import type { OpenLesson } from './open-lesson.ts';
import type { ClipAside, RouteClip } from './sorted-clips.ts';

/** A flag with its key and the teacher's answer. */
export interface RaisedFlag {
  readonly flag: Flag;
  readonly key: FlagKey;
  /** Null: the flag is open. */
  readonly answer: FlagAnswer | null;
  /** False: a notice that asks nothing of the teacher and holds nothing up. */
  readonly asks: boolean;
}

/** One clip of a squad's walk, from its bytes to what is proposed for it. */
export interface GradedClip extends RouteClip {
  /** Below the folder of clips. */
  readonly path: string;
  readonly assignment: ClipAssignment;
  readonly flags: readonly RaisedFlag[];
  readonly proposals: readonly Proposal[];
}

/** One squad's walk against its route. */
export interface GradedSquad {
  readonly squad: Squad;
  readonly clock: TabletClock;
  /** In the order of filming. */
  readonly clips: readonly GradedClip[];
  readonly match: SquadMatch;
}

/** A lesson with everything the machine has to say about it, and the teacher's decisions worked in. */
export interface GradedLesson {
  readonly lesson: OpenLesson;
  /** In the plan's order. */
  readonly squads: readonly GradedSquad[];
  readonly aside: readonly ClipAside[];
  readonly flags: readonly RaisedFlag[];
  readonly score: LessonScore;
  readonly problems: readonly ClipsProblem[];
}
