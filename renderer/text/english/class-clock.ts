import type { ClassPart } from '../../../src-core/lesson/class-clock.ts';
import { distance } from './amounts.ts';

const FAR_OFF_MS = 3 * 3_600_000;

function writeSpan(ms: number): string {
  const seconds = Math.round(Math.abs(ms) / 1000);
  return seconds < 90 ? `${seconds} s` : `${Math.round(seconds / 60)} min`;
}

/** All that the class clock says. */
export const CLASS_CLOCK = {
  title: 'Class clock',
  part: (part: ClassPart, slots: number): string => {
    if (part.kind === 'slot') return `slot ${part.slot + 1} of ${slots}`;
    return { before: 'before class', 'warm-up': 'warm-up', 'clear-up': 'clear up', after: 'class is over' }[
      part.kind
    ];
  },
  /** Stands above the figures. */
  until: (part: ClassPart): string =>
    ({
      before: 'class begins in',
      'warm-up': 'warm up for',
      slot: 'move on in',
      'clear-up': 'bring everything back in',
      after: '',
    })[part.kind],
  /** Stands below the figures. */
  afterwards: (next: ClassPart | null): string => {
    if (next === null) return 'well done';
    if (next.kind === 'slot')
      return next.slot === 0 ? 'then walk to your first station' : 'then walk to your next station';
    return {
      before: '',
      'warm-up': 'then warm up',
      'clear-up': 'then clear up',
      after: 'then class is over',
    }[next.kind];
  },
  now: 'Where each squad is',
  firstAt: (place: string) => `begins at ${place}`,
  done: 'has been everywhere',
  code: (time: string) => `Code of the instant ${time}, for tablets to film`,
  film: (metres: number) =>
    `Film this code once with every tablet, from no more than ${distance(metres)} away.`,
  tooSmall: (metres: number) =>
    `For ${distance(metres)} it must be ${Math.round(metres * 10)} cm wide: enlarge the window, or use a projector.`,
  start: 'Start now',
  asBell: 'By the bell',
  earlier: '1 min earlier',
  later: '1 min later',
  /** How far off its bell a class began; `time` is when. Far off, it is held at another time of its own. */
  shifted: (ms: number, time: string) =>
    Math.abs(ms) < FAR_OFF_MS
      ? `${writeSpan(ms)} ${ms < 0 ? 'before' : 'after'} its bell`
      : `started at ${time}, not by the bell`,
  sound: (isOn: boolean) => (isOn ? 'Sound on' : 'Sound off'),
  wholeScreen: 'Whole screen',
  close: 'Close',
  jumped: (ms: number) =>
    `${ms < 0 ? `This machine’s clock went back by ${writeSpan(ms)}.` : `This machine’s clock jumped ahead by ${writeSpan(ms)}, or the machine slept.`} Look whether the time under the code is right.`,
  seen: 'It is right',
  care: 'Stop for pain or dizziness at any time. Nobody is timed for speed.',
} as const;
