import { useCallback, useSyncExternalStore } from 'react';
import { buildHash, type Route, readRoute } from '../client/route.ts';

/** The route in the address, and the way to change it. Steps go into the window's history, targets do not. */
export function useRoute(): readonly [Route, (change: Partial<Route>) => void] {
  const hash = useSyncExternalStore(follow, () => location.hash);
  const go = useCallback((change: Partial<Route>) => {
    const now = readRoute(location.hash);
    const next = buildHash({ ...now, target: null, ...change });
    if (next === location.hash) return;
    const isSameStep = (change.step ?? now.step) === now.step && !('lesson' in change);
    if (isSameStep) history.replaceState(null, '', next);
    else history.pushState(null, '', next);
    dispatchEvent(new HashChangeEvent('hashchange'));
  }, []);
  return [readRoute(hash), go];
}

function follow(listener: () => void): () => void {
  addEventListener('hashchange', listener);
  return () => removeEventListener('hashchange', listener);
}
