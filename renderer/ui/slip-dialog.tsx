import { type KeyboardEvent, type ReactNode, useEffect, useId, useRef } from 'react';
import { CLOSE } from '../text/english/window.ts';
import { Button } from './button.tsx';

/**
 * A question that sits on the sheet where it belongs: no curtain over the page. Focus goes into it and, when it
 * closes, back to where it was; Escape closes it.
 */
export function SlipDialog({
  title,
  onClose,
  onKey,
  children,
}: {
  readonly title: string;
  readonly onClose: () => void;
  /** Hears every key pressed within the slip but Escape. */
  readonly onKey?: (event: KeyboardEvent) => void;
  readonly children: ReactNode;
}) {
  const head = useId();
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    const find = (what: string) => box.current?.querySelector<HTMLElement>(what);
    (find('input, select, textarea, .first') ?? find('button'))?.focus();
    return () => {
      if (before instanceof HTMLElement && before.isConnected) before.focus();
    };
  }, []);
  return (
    <section
      ref={box}
      className="slip-dialog"
      role="dialog"
      aria-labelledby={head}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return onKey?.(event);
        event.stopPropagation();
        onClose();
      }}
    >
      <header>
        <h2 id={head}>{title}</h2>
        <Button look="bare" onPress={onClose} className="push">
          {CLOSE}
        </Button>
      </header>
      {children}
    </section>
  );
}
