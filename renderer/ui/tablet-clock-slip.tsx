import { useState } from 'react';
import type { SquadView } from '../../src-core/contract/lesson-view.ts';
import { parseCorrection, writeCorrection } from '../../src-core/lesson/clock-correction.ts';
import type { JournalAct } from '../../src-core/marking/journal-event.ts';
import { BRING_IN, signedSpan } from '../text/english/bring-in.ts';
import { CLOCK } from '../text/english/clock.ts';
import { Button } from './button.tsx';
import { SlipDialog } from './slip-dialog.tsx';

/** Sets a tablet's clock by hand, to what would fit, or back to what was found. */
export function TabletClockSlip({
  squad,
  name,
  shiftSeconds,
  onDecide,
  onClose,
}: {
  readonly squad: SquadView;
  readonly name: string;
  /** A correction that would fit the period; null: none is known. */
  readonly shiftSeconds: number | null;
  readonly onDecide: (act: JournalAct) => void;
  readonly onClose: () => void;
}) {
  const { clock, code } = squad;
  const [text, setText] = useState(writeCorrection(shiftSeconds ?? clock.offsetSeconds));
  const seconds = parseCorrection(text);
  const set = (correctionSeconds: number | null) => {
    onDecide({ kind: 'clock-set', squad: code, correctionSeconds });
    onClose();
  };
  return (
    <SlipDialog title={CLOCK.title(name)} onClose={onClose}>
      <p>{CLOCK.now(`${BRING_IN.clock(clock.offsetSeconds)}, ${SOURCES[clock.from]}`)}</p>
      <form
        className="clock-form"
        onSubmit={(event) => {
          event.preventDefault();
          if (seconds !== null) set(seconds);
        }}
      >
        <label>
          {CLOCK.label}{' '}
          <input
            className="field"
            value={text}
            aria-invalid={seconds === null}
            aria-describedby="clock-hint"
            onChange={({ target }) => setText(target.value)}
          />
        </label>
        <p id="clock-hint" className="cap">
          {seconds === null ? CLOCK.wrong : CLOCK.hint}
        </p>
        <div className="rem">
          <Button look="ink" isDisabled={seconds === null} onPress={() => seconds !== null && set(seconds)}>
            {CLOCK.set}
          </Button>
          {shiftSeconds !== null && (
            <Button onPress={() => set(shiftSeconds)}>{CLOCK.shift(signedSpan(shiftSeconds))}</Button>
          )}
          {clock.from === 'teacher' && <Button onPress={() => set(null)}>{CLOCK.asFound}</Button>}
        </div>
      </form>
    </SlipDialog>
  );
}

const SOURCES = {
  teacher: CLOCK.fromTeacher,
  'clock-film': CLOCK.fromFilm,
  nothing: CLOCK.fromNothing,
} as const;
