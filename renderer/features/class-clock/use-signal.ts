import { useEffect, useRef, useState } from 'react';

/** A soft signal at the turn of each part of the lesson. */
export interface Signal {
  readonly isOn: boolean;
  readonly toggle: () => void;
}

const LENGTH_SECONDS = 0.9;
const LOUDNESS = 0.15;

/** Sounds the signal when `part` changes, once it was switched on; it is off at first. */
export function useSignal(part: string): Signal {
  const [isOn, setOn] = useState(false);
  const sound = useRef<AudioContext | null>(null);
  const last = useRef(part);
  useEffect(() => {
    if (last.current !== part && isOn && sound.current) ring(sound.current);
    last.current = part;
  }, [part, isOn]);
  useEffect(() => () => void sound.current?.close(), []);
  return {
    isOn,
    toggle: () => {
      // A browser lets a page sound from a press on.
      sound.current ??= new AudioContext();
      if (!isOn) ring(sound.current);
      setOn(!isOn);
    },
  };
}

/** A bell's note that swells and fades, without a click at either end. */
function ring(context: AudioContext): void {
  const [tone, volume] = [context.createOscillator(), context.createGain()];
  const { currentTime } = context;
  tone.frequency.value = 523.25;
  volume.gain.setValueAtTime(0, currentTime);
  volume.gain.linearRampToValueAtTime(LOUDNESS, currentTime + 0.05);
  volume.gain.exponentialRampToValueAtTime(0.001, currentTime + LENGTH_SECONDS);
  tone.connect(volume).connect(context.destination);
  tone.start();
  tone.stop(currentTime + LENGTH_SECONDS);
}
