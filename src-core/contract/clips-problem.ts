import type { CardProblem, ForeignCode } from '../evidence/card-vote.ts';
import type { EvidenceProblem } from '../evidence/evidence-problem.ts';
import type { FilmsDeletedProblem } from '../gradebook/hand-in-check.ts';
import type { FolderOwner } from '../intake/assign-squad.ts';
import type { FolderProblem } from '../intake/folder-problem.ts';
import type { StampProblem } from '../intake/stamp.ts';
import type { SquadCode } from '../lesson/plan.ts';
import type { ClipId } from '../matching/observation.ts';
import type { Seconds } from '../platform/units.ts';

/** What was met among the clips that is no flag, but that the teacher should know. Paths: below the clips' folder. */
export type ClipsProblem =
  | FolderProblem
  | {
      readonly code: 'clip-of-nobody';
      readonly path: string;
      readonly reason: Extract<FolderOwner, { squad: null }>['reason'];
    }
  | { readonly code: 'same-clip-twice'; readonly squad: SquadCode; readonly paths: readonly string[] }
  | { readonly code: 'squad-without-clips'; readonly squad: SquadCode }
  | FilmsDeletedProblem
  | { readonly code: 'clock-unchecked'; readonly squad: SquadCode; readonly uncertaintySeconds: Seconds }
  | { readonly code: 'clock-films-disagree'; readonly squad: SquadCode; readonly clips: readonly ClipId[] }
  | { readonly code: 'stamp-odd'; readonly path: string; readonly problem: StampProblem }
  | {
      readonly code: 'card-foreign';
      readonly path: string;
      readonly text: string;
      readonly kind: ForeignCode['kind'];
    }
  | {
      readonly code: 'cards-not-searched';
      readonly paths: readonly string[];
      readonly problem: EvidenceProblem;
    }
  | { readonly code: 'card-odd'; readonly path: string; readonly problem: CardProblem };
