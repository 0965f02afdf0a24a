import { CLASS_CLOCK } from '../../text/english/class-clock.ts';
import { Button } from '../../ui/button.tsx';
import { useKeys } from '../../ui/keys/use-keys.ts';
import { useSignal } from './use-signal.ts';
import { useWholeScreen } from './use-whole-screen.ts';

const MINUTE_MS = 60_000;

/** The class clock's tools: it follows the bell, and can be started now or shifted, but not held. */
export function ClockTools({
  part,
  shiftMs,
  onStart,
  onShift,
  onClose,
}: {
  /** The part of the lesson in words; a change of it is signalled. */
  readonly part: string;
  readonly shiftMs: number;
  readonly onStart: () => void;
  readonly onShift: (shiftMs: number) => void;
  readonly onClose: () => void;
}) {
  const signal = useSignal(part);
  const screen = useWholeScreen();
  const earlier = () => onShift(shiftMs - MINUTE_MS);
  const later = () => onShift(shiftMs + MINUTE_MS);
  useKeys({
    'clock-start': onStart,
    'clock-earlier': earlier,
    'clock-later': later,
    'clock-sound': signal.toggle,
    'clock-whole': screen.toggle,
  });
  return (
    <div className="cc-tools">
      <Button onPress={onStart} keyId="clock-start">
        {CLASS_CLOCK.start}
      </Button>
      <Button onPress={earlier} keyId="clock-earlier">
        {CLASS_CLOCK.earlier}
      </Button>
      <Button onPress={later} keyId="clock-later">
        {CLASS_CLOCK.later}
      </Button>
      <Button onPress={() => onShift(0)} isDisabled={shiftMs === 0}>
        {CLASS_CLOCK.asBell}
      </Button>
      <Button onPress={signal.toggle} keyId="clock-sound">
        {CLASS_CLOCK.sound(signal.isOn)}
      </Button>
      {screen.isOffered && (
        <Button onPress={screen.toggle} keyId="clock-whole">
          {CLASS_CLOCK.wholeScreen}
        </Button>
      )}
      <Button onPress={onClose} keyId="back-out">
        {CLASS_CLOCK.close}
      </Button>
    </div>
  );
}
