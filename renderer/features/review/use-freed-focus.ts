import { type RefObject, useLayoutEffect } from 'react';

/**
 * Takes the focus off what is in a part of the page as soon as that stands for another clip: a key that is meant for the
 * next clip must not change an answer which the hand has not chosen there.
 */
export function useFreedFocus(part: RefObject<HTMLElement | null>, clip: string): void {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the clip is what asks for it
  useLayoutEffect(() => {
    const { activeElement } = document;
    if (activeElement instanceof HTMLElement && part.current?.contains(activeElement)) activeElement.blur();
  }, [part, clip]);
}
