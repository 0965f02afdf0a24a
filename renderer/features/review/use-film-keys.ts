import { useKeys } from '../../ui/keys/use-keys.ts';
import { type CountSheet, findLineBeside, getStillMoment } from './count-sheet.ts';
import { type FilmControl, shiftRate } from './film-control.ts';
import { toggleLoop } from './transport.tsx';

/** The keys that run the film. */
export function useFilmKeys(control: FilmControl, sheet: CountSheet): void {
  const toLine = (by: 1 | -1) => {
    const { seconds, loop } = control.getState();
    const line = findLineBeside(sheet, seconds, by);
    if (!line) return false;
    // A loop goes over to the line from its beginning; otherwise its still is shown.
    control.seek(loop ? line.fromSeconds : getStillMoment(line));
    if (loop) control.setLoop({ fromSeconds: line.fromSeconds, toSeconds: line.toSeconds });
    return true;
  };
  const shift = (by: 1 | -1) => control.setRate(shiftRate(control.getState().rate, by));
  useKeys({
    // A box that has the focus is answered by Space.
    play: () => (isAnswer(document.activeElement) ? false : control.toggle()),
    'rep-up': () => toLine(-1),
    'rep-down': () => toLine(1),
    'frame-back': () => control.step(-1),
    'frame-on': () => control.step(1),
    'loop-rep': () => toggleLoop(control, sheet),
    slower: () => shift(-1),
    faster: () => shift(1),
  });
}

function isAnswer(element: Element | null): boolean {
  return element instanceof HTMLInputElement && element.type === 'radio';
}
