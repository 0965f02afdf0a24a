import type { StationSight } from '../evidence/card-vote.ts';
import type { GivenLanes } from '../evidence/unison-finding.ts';
import type { Stamp } from '../intake/stamp.ts';
import type { TabletClock } from '../intake/tablet-clock.ts';
import type { TimedClip } from '../intake/tablet-times.ts';
import type { Plan, SlotIndex, SquadCode, StationCode } from '../lesson/plan.ts';
import type { Pupil } from '../lesson/roster.ts';
import type { CriterionMark } from '../marking/clip-score.ts';
import type { FlagAnswer, HandedIn } from '../marking/decisions.ts';
import type { JournalDecision, JournalEventId } from '../marking/journal-event.ts';
import type { PupilScore, SquadScore } from '../marking/points.ts';
import type { Proposal } from '../marking/proposal.ts';
import type { ClipAssignment } from '../matching/assignment.ts';
import type { Flag, FlagKey } from '../matching/flag.ts';
import type { ClipId } from '../matching/observation.ts';
import type { OrderMeasures } from '../matching/order-measures.ts';
import type { MediaFacts } from '../media/media-facts.ts';
import type { Seconds } from '../platform/units.ts';
import type { AsideReason } from './aside-reason.ts';
import type { LessonId } from './desk-view.ts';
import type { Problem } from './problem.ts';

/** A copy of a recording as it lies on the disk; `path` is below the folder of clips. */
export interface ClipCopy {
  readonly path: string;
  readonly squad: SquadCode;
  readonly sizeBytes: number;
}

/** What the teacher has said of where a clip belongs and who is in it; null: nothing. */
export interface ClipWord {
  readonly station: StationCode | null;
  readonly squad: SquadCode | null;
  /** `none`: set aside by hand. */
  readonly slot: SlotIndex | 'none' | null;
  readonly lanes: GivenLanes | null;
}

/** What was seen in a clip's pictures, in short; all of it is an `EvidenceView`, asked for by `readEvidence`. */
export interface SeenView {
  /** `no`: not watched whole yet. `in-vain`: watched, and not one picture could be decoded. */
  readonly watched: 'no' | 'yes' | 'in-vain';
  /** Null: not counted. */
  readonly reps: {
    /** Null: none found. */
    readonly count: number | null;
    /** 0 to 1. */
    readonly confidence: number;
    /** Begin of the first rep, from the clip's beginning; null without reps. */
    readonly firstSeconds: Seconds | null;
  } | null;
  /** 0 chance or less, 1 unison; null: not measured, or lanes could not be told apart. */
  readonly unison: number | null;
  /** The teacher's word that unison is measured with; null: lanes are estimated. */
  readonly lanes: GivenLanes | null;
  /** Unison is being measured: a moment after the clip was watched, or after the teacher's word on its lanes. */
  readonly isMeasuring: boolean;
}

/** One recording of the lesson, in a squad's walk or set aside. */
export interface ClipView {
  readonly id: ClipId;
  /** Whose it is taken to be; null: nobody's. */
  readonly squad: SquadCode | null;
  /** Null: it takes part in its squad's walk. */
  readonly aside: AsideReason | null;
  /** Place among its squad's walk in the order filmed, from 0; null where set aside. */
  readonly position: number | null;
  /** The copy that counts, below the folder of clips. */
  readonly path: string;
  readonly copies: readonly ClipCopy[];
  /** Null: nothing usable was read from the file. */
  readonly holds: MediaFacts['holds'] | null;
  readonly container: MediaFacts['container'] | null;
  /** Four-character code of the picture, such as `avc1` or `hvc1`; null where there is none. */
  readonly codec: string | null;
  readonly durationSeconds: Seconds | null;
  readonly stamp: Stamp;
  /** Null where the clip has no place in time at all. Uncertainty may be Infinity. */
  readonly time: TimedClip | null;
  /** Null where set aside. */
  readonly assignment: ClipAssignment | null;
  /** Where the card in the clip says it was filmed; null where none was read. */
  readonly card: StationSight | null;
  /** The class clock is in the picture. */
  readonly showsClock: boolean;
  /** False: its pictures have not been searched for cards yet, so station and slot may change. */
  readonly isSearched: boolean;
  readonly seen: SeenView;
  readonly word: ClipWord;
  /** Keys of `LessonView.flags`. */
  readonly flags: readonly FlagKey[];
  readonly proposals: readonly Proposal[];
  /** How it stands with each criterion, in the rubric's order; null where it counts for no slot. */
  readonly criteria: readonly CriterionMark[] | null;
  /** What it earns under the plan's order rule, overrides included; null where it counts for no slot. */
  readonly points: number | null;
  /** The teacher's note; null: none. */
  readonly note: string | null;
}

/** One squad's walk as a whole; name, colour and route stand in the plan. */
export interface SquadView {
  readonly code: SquadCode;
  readonly clock: TabletClock;
  /** Slots without a clip. */
  readonly missing: readonly SlotIndex[];
  readonly order: OrderMeasures;
}

/** A flag with its key and the teacher's answer. */
export interface FlagView {
  readonly key: FlagKey;
  readonly flag: Flag;
  /** Null: nobody has settled it. */
  readonly answer: FlagAnswer | null;
  /** False: a notice that asks nothing of the teacher and holds nothing up. */
  readonly asks: boolean;
}

/** Where the journal stands, and what undo and redo would do. */
export interface JournalView {
  /** What undo would take back; null: nothing. */
  readonly undoTarget: JournalEventId | null;
  readonly undoes: JournalDecision | null;
  /** What redo would bring back; null: nothing. */
  readonly redoTarget: JournalEventId | null;
  readonly redoes: JournalDecision | null;
  /** Instant of the latest event, ISO 8601 in UTC; null for an empty journal. */
  readonly lastAt: string | null;
  readonly handedIn: readonly HandedIn[];
}

/** How far the folder of clips has been read. */
export interface ReadingView {
  /** `cards`: every stamp is known, and pictures are being searched. `stopped`: cancelled or failed midway. */
  readonly state: 'unread' | 'stamps' | 'cards' | 'read' | 'stopped';
  readonly done: number;
  readonly total: number;
}

/**
 * A lesson as a face shows it: all that was read, proposed and decided, as plain data. Lists are in the order to be
 * shown; items are known by `id`, `code`, `key`, `squad` and `pupil.id`. Nothing here is ever edited by the page:
 * what it wants otherwise it decides.
 */
export interface LessonView {
  readonly lesson: LessonId;
  /** Rises with every change as long as the host runs; a host started anew begins above all that it gave before. */
  readonly revision: number;
  /** Path of the lesson folder, for showing. */
  readonly path: string;
  /** Path of the folder of clips, for showing; differs from `clips` in the lesson where clips are read in place. */
  readonly clipsPath: string;
  readonly isDemo: boolean;
  /** A second marking of the lesson `of`, blind to the first; left out in the lesson itself. */
  readonly second?: { readonly who: string; readonly of: LessonId };
  readonly plan: Plan;
  /** Stands for the bytes of plan.json; given back with an edit, so that no other edit is lost. */
  readonly planVersion: string;
  readonly pupils: readonly Pupil[];
  /** Squads of which no still may show. */
  readonly unshown: readonly SquadCode[];
  readonly squads: readonly SquadView[];
  /** Walks by squad in the order filmed, then those set aside. */
  readonly clips: readonly ClipView[];
  readonly flags: readonly FlagView[];
  /** Empty until clips were read. */
  readonly squadScores: readonly SquadScore[];
  readonly pupilScores: readonly PupilScore[];
  readonly problems: readonly Problem[];
  readonly journal: JournalView;
  readonly reading: ReadingView;
}
