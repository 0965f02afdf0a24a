import { useCallback, useSyncExternalStore } from 'react';
import { buildHash, type Route, readRoute } from '../client/route.ts';
import { afterPaint } from '../ui/after-paint.ts';

/** The route in the address, and the way to change it. Steps go into the window's history, targets do not. */
export function useRoute(): readonly [Route, (change: Partial<Route>) => void] {
  const hash = useSyncExternalStore(follow, getHash);
  const go = useCallback((change: Partial<Route>) => {
    const now = readRoute(getHash());
    const next = buildHash({ ...now, target: null, ...change });
    if (next === getHash()) return;
    const isSameStep = (change.step ?? now.step) === now.step && !('lesson' in change);
    if (isSameStep) goAhead(next);
    else {
      writeAddress();
      history.pushState(null, '', next);
    }
    for (const listener of listeners) listener();
  }, []);
  return [readRoute(hash), go];
}

/** The window is there already, and its address follows: writing one takes long enough to be felt between two clips. */
let ahead: { readonly from: string; readonly hash: string; readonly callOff: () => void } | null = null;

const listeners = new Set<() => void>();

function getHash(): string {
  // An address that was changed meanwhile, by the way back or by hand, is the later word.
  return ahead?.from === location.hash ? ahead.hash : location.hash;
}

function goAhead(hash: string): void {
  ahead?.callOff();
  ahead = { from: location.hash, hash, callOff: afterPaint(writeAddress) };
}

function writeAddress(): void {
  const hash = getHash();
  ahead?.callOff();
  ahead = null;
  if (hash !== location.hash) history.replaceState(null, '', hash);
}

function follow(listener: () => void): () => void {
  listeners.add(listener);
  addEventListener('hashchange', listener);
  return () => {
    listeners.delete(listener);
    removeEventListener('hashchange', listener);
  };
}
