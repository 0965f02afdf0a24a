import { useMemo, useSyncExternalStore } from 'react';
import { type FilmControl, type FilmState, openFilmControl } from './film-control.ts';

/** A control for the film of `key`; another key begins anew, at the same speed as nothing else is kept. */
export function useFilmControl(key: string): FilmControl {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key is what asks for a new one
  return useMemo(openFilmControl, [key]);
}

/** A part of a film's state, painted anew only when it changes. */
export function useFilmState<Part>(control: FilmControl, select: (state: FilmState) => Part): Part {
  return useSyncExternalStore(control.subscribe, () => select(control.getState()));
}
