import { BRING_IN } from '../../text/english/bring-in.ts';
import type { Names } from '../../text/names.ts';
import type { Remedy } from './waiting.ts';

/** What stands on a remedy's button. */
export function nameRemedy(remedy: Remedy, names: Names): string {
  switch (remedy.kind) {
    case 'whose':
      return BRING_IN.whose(names.squad(remedy.squad));
    case 'leave-out':
      return BRING_IN.leaveOut;
    case 'take-in':
      return BRING_IN.takeIn;
    case 'stays-with':
      return BRING_IN.staysWith(names.squad(remedy.squad));
    case 'place-is-right':
      return BRING_IN.placeIsRight;
    case 'use-shift':
      return BRING_IN.shiftBy(remedy.seconds);
    case 'leave-in-doubt':
      return BRING_IN.leaveInDoubt;
    case 'set-clock':
      return BRING_IN.setClock;
    case 'choose-slot':
      return BRING_IN.chooseSlot;
  }
}
