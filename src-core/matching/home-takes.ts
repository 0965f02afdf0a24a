import type { Homes } from './reading.ts';
import type { Walk } from './walk.ts';
import type { WalkClip } from './walk-clip.ts';

/** What an explanation must tell to be compared. */
interface Priced {
  readonly homes: Homes;
  readonly cost: number;
}

/** Up to this many choices are all tried; a lesson has a handful of stations filmed twice, so rarely over 16. */
const MOST_CHOICES_TRIED = 256;

/**
 * Tries which take of each slot counts and returns the cheapest explanation; the first tried wins a tie, and
 * the take that the plan's rule names is tried first.
 *
 * Over {@link MOST_CHOICES_TRIED} choices (a squad that filmed its whole route many times over) the rule's
 * choice is improved slot by slot until nothing gets cheaper: good, not proven best.
 */
export function tryHomes<Story extends Priced>(walk: Walk, explain: (homes: Homes) => Story): Story {
  const candidates = walk.takes.map((takes) => listCandidates(takes, walk.retake));
  const choices = candidates.reduce((product, slot) => product * slot.length, 1);
  return choices <= MOST_CHOICES_TRIED ? tryAll(candidates, explain) : improve(candidates, explain);
}

/** Takes that may count, the rule's first. A slot given by hand, or an order in time, goes before the rest. */
function listCandidates(takes: readonly WalkClip[], rule: Walk['retake']): readonly (WalkClip | null)[] {
  const byHand = takes.filter((take) => take.slotIsFinal);
  const eligible = byHand.length > 0 ? byHand : takes;
  const ordered = eligible.filter((take) => take.row !== null);
  const ranked = rule === 'last' ? ordered.toReversed() : ordered;
  const [first] = ranked.length > 0 ? ranked : eligible;
  if (first === undefined) return [null];
  return byHand.length > 0 || ranked.length === 0 ? [first] : ranked;
}

function tryAll<Story extends Priced>(
  candidates: readonly (readonly (WalkClip | null)[])[],
  explain: (homes: Homes) => Story,
): Story {
  const all = candidates.reduce<Homes[]>(
    (choices, slot) => choices.flatMap((choice) => slot.map((take) => [...choice, take])),
    [[]],
  );
  return all.map(explain).reduce(getCheaper);
}

function improve<Story extends Priced>(
  candidates: readonly (readonly (WalkClip | null)[])[],
  explain: (homes: Homes) => Story,
): Story {
  let best = explain(candidates.map(([first]) => first ?? null));
  for (let settled = false; !settled; ) {
    const before = best.cost;
    candidates.forEach((slot, index) => {
      const others = slot.filter((take) => take !== best.homes[index]);
      best = others.map((take) => explain(best.homes.with(index, take))).reduce(getCheaper, best);
    });
    settled = best.cost >= before;
  }
  return best;
}

function getCheaper<Story extends Priced>(best: Story, next: Story): Story {
  return next.cost < best.cost ? next : best;
}
