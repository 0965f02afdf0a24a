import type { RosterMerge } from '../../../src-core/lesson/roster/merge-roster.ts';
import type { RoutesNature } from '../../../src-core/lesson/routes/describe-routes.ts';
import type { Queue, WalkedPlan } from '../../../src-core/lesson/walk/walk-plan.ts';
import type { Names } from '../names.ts';
import { count, span } from './amounts.ts';

/** What planning says beside its problems, on the command line and the page alike. */
export const PLANNING = {
  metres: (metres: number) => `${Math.round(metres)} m`,
  nature: ({ isFreeOfMeetings, isBalanced, legs }: RoutesNature) =>
    [
      isFreeOfMeetings ? 'No two squads meet' : 'Some squads meet',
      isBalanced
        ? 'every station follows every other equally often'
        : `${legs.distinct} of ${count(legs.possible, 'leg')} ${legs.distinct === 1 ? 'is' : 'are'} walked, the most walked ${count(legs.most, 'time')}`,
    ]
      .join('; ')
      .concat('.'),
  kept: (isSaved: boolean) =>
    isSaved
      ? 'Saved; what the plan said before is among its versions.'
      : 'A suggestion: nothing was written.',
  madeAt: (folder: string) => `${folder}: the lesson is there; its plan is to be gone through.`,
  noChange: 'Nothing changed.',
  noVersion: 'The plan was never saved over another.',
  queue: ({ station, slot, squads, waitSeconds, atSeconds }: Queue, names: Names) =>
    `${names.squad(squads.waiting)} waits ${span(waitSeconds)} for ${names.squad(squads.working)} at ${names.station(station)} (slot ${slot + 1}, ${span(atSeconds)} after the start)`,
  noQueue: 'Nobody waits.',
  end: ({ endSeconds, workSeconds }: WalkedPlan) =>
    workSeconds === null
      ? `The last squad is done after ${span(endSeconds)}.`
      : `The last squad is done after ${span(endSeconds)}; the plan leaves ${span(workSeconds)} for work.`,
  estimate: 'A simulated class: estimates for planning. No squad is to be hurried by them.',
  mergeSum: ({ added, changed, left, back, unchanged }: RosterMerge) =>
    `${added.length} new, ${changed.length} renamed, ${left.length} left, ${back.length} back, ${unchanged} as before.`,
  rosterKept: (isSaved: boolean) =>
    isSaved ? 'roster.csv was written.' : 'Nothing was written; add --save to take this in.',
  tempo: 'Tempos are common practice for one full cycle, to be adapted to the class; local code goes first.',
} as const;
