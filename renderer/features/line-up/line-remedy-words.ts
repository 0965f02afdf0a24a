import type { FlagCode } from '../../../src-core/matching/flag.ts';
import { LINE_UP } from '../../text/english/line-up.ts';
import type { Names } from '../../text/names.ts';
import type { LineRemedy } from './line-remedies.ts';

/** What stands on a remedy's button. */
export function nameLineRemedy(remedy: LineRemedy, code: FlagCode, names: Names): string {
  switch (remedy.kind) {
    case 'keep':
      return LINE_UP.keepOf[code] ?? LINE_UP.keep;
    case 'clear':
      return LINE_UP.clearOf[code] ?? LINE_UP.clear;
    case 'use-clip':
      return LINE_UP.itIsClip(names.clip(remedy.clip));
    case 'put':
      return LINE_UP.put(remedy.slot, remedy.station && names.station(remedy.station));
    case 'use-this-take':
      return LINE_UP.takeCounts;
    case 'choose-station':
      return LINE_UP.chooseStation;
    case 'move':
      return LINE_UP.move;
    case 'clock':
      return LINE_UP.clockWrong;
  }
}
