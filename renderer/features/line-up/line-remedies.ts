import type { FlagView } from '../../../src-core/contract/lesson-view.ts';
import type { SlotIndex, StationCode } from '../../../src-core/lesson/plan.ts';
import type { JournalAct } from '../../../src-core/marking/journal-event.ts';

/** A way to settle a flag of the route; the first of a list is the inked one. */
export type LineRemedy =
  /** It is as flagged; a reason may go with it. */
  | { readonly kind: 'keep' }
  /** It is not as flagged. */
  | { readonly kind: 'clear' }
  | { readonly kind: 'use-clip'; readonly clip: string; readonly acts: readonly JournalAct[] }
  | {
      readonly kind: 'put';
      readonly slot: SlotIndex | null;
      readonly station: StationCode | null;
      readonly acts: readonly JournalAct[];
    }
  | { readonly kind: 'use-this-take'; readonly acts: readonly JournalAct[] }
  /** These open a slip on the sheet. */
  | { readonly kind: 'choose-station' | 'move' | 'clock' };

const KEEP: LineRemedy = { kind: 'keep' };
const CLEAR: LineRemedy = { kind: 'clear' };

/** What can be done about a flag of the route. */
export function listLineRemedies({ flag }: FlagView): readonly LineRemedy[] {
  switch (flag.code) {
    case 'out-of-order':
      return [KEEP, CLEAR, { kind: 'clock' }];
    case 'missing':
      return [
        ...flag.candidates.map(
          (clip): LineRemedy => ({
            kind: 'use-clip',
            clip,
            acts: [{ kind: 'clip-placed', clip, slot: flag.slot }],
          }),
        ),
        KEEP,
      ];
    case 'extra':
      return [KEEP, { kind: 'move' }];
    case 'retake':
      return [
        KEEP,
        { kind: 'use-this-take', acts: [{ kind: 'clip-placed', clip: flag.clip, slot: flag.slot }] },
      ];
    case 'wrong-place':
      return [KEEP, { kind: 'choose-station' }, { kind: 'move' }];
    case 'unplaced':
      return [
        ...flag.either.map(({ slot, station }): LineRemedy => {
          const act: JournalAct = { kind: 'clip-placed', clip: flag.clip, slot: slot ?? 'none' };
          return { kind: 'put', slot, station, acts: [act] };
        }),
        { kind: 'choose-station' },
      ];
    case 'too-short':
      return [KEEP, CLEAR];
    default:
      return [KEEP, CLEAR];
  }
}

/** The act that keeps or clears a flag; an empty reason is none. */
export function settle(key: string, settled: 'kept' | 'cleared' | null, reason = ''): JournalAct {
  const words = reason.trim();
  return { kind: 'flag-settled', flag: key, settled, reason: words === '' ? null : words };
}
