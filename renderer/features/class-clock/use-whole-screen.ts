import { useEffect } from 'react';

/**
 * While the class clock is shown the screen stays lit, and the clock takes all of it once it is told to. Whatever the
 * browser lacks or refuses is left as it is.
 */
export function useWholeScreen(): { readonly toggle: () => void; readonly isOffered: boolean } {
  useEffect(() => {
    let lock: WakeLockSentinel | null = null;
    let isShown = true;
    // The lock is lost whenever the page is hidden.
    const keepLit = async () => {
      if (document.visibilityState !== 'visible') return;
      const taken = await navigator.wakeLock?.request('screen').catch(() => null);
      if (isShown) lock = taken ?? null;
      else void taken?.release();
    };
    void keepLit();
    document.addEventListener('visibilitychange', keepLit);
    return () => {
      isShown = false;
      document.removeEventListener('visibilitychange', keepLit);
      void lock?.release();
      if (document.fullscreenElement) void document.exitFullscreen();
    };
  }, []);
  return {
    isOffered: document.fullscreenEnabled,
    toggle: () => {
      const change = document.fullscreenElement
        ? document.exitFullscreen()
        : document.documentElement.requestFullscreen();
      // A browser that refuses has said so itself.
      change.catch(() => {});
    },
  };
}
