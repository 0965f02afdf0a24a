import { type KeyboardEvent, type ReactNode, useEffect, useRef, useState } from 'react';
import { flushSync } from 'react-dom';
import { WORDS } from '../../text/english/plan-step.ts';

/** What every underlined word of the sheet has. */
export interface WordProps {
  /** What the word stands for, for its name. */
  readonly label: string;
  /** As it stands in the sentence; empty: nothing is there yet. */
  readonly shown: string;
  /** Pencilled in the place of nothing, such as "add a clue". */
  readonly hint?: string;
  /** Where in plan.json it stands, such as `stations[2].reps`, so that a problem can lead to it. */
  readonly at?: string;
}

/** Ends an edit; `isByKey`: Enter or Escape, so the focus goes back to the word. */
export type CloseWord = (isByKey: boolean) => void;

/**
 * An underlined word of a sentence. Pressed, or typed at, it becomes a field in its place; Enter, Tab or leaving
 * decides, Escape gives up.
 */
export function Word({
  label,
  shown,
  hint = WORDS.nothing,
  at,
  edit,
}: WordProps & { readonly edit: (close: CloseWord) => ReactNode }) {
  const [isEdited, setEdited] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const comesBack = useRef(false);
  useEffect(() => {
    if (comesBack.current && !isEdited) button.current?.focus();
    comesBack.current = false;
  }, [isEdited]);
  const close: CloseWord = (isByKey) => {
    comesBack.current = isByKey;
    setEdited(false);
  };
  if (isEdited) return edit(close);
  const typeAt = (event: KeyboardEvent) => {
    if (!isTyped(event)) return;
    event.stopPropagation();
    // Now, so that the sign itself falls into the field that takes the focus.
    flushSync(() => setEdited(true));
  };
  return (
    <button
      ref={button}
      type="button"
      className={`word ${shown === '' ? 'pen' : ''}`}
      aria-label={shown === '' ? WORDS.add(label, hint) : WORDS.change(label, shown)}
      data-at={at}
      onClick={() => setEdited(true)}
      onKeyDown={typeAt}
    >
      {shown === '' ? hint : shown}
    </button>
  );
}

/** A sign that begins a text; `?` stays the key to the list of keys. */
function isTyped({ key, ctrlKey, metaKey, altKey }: KeyboardEvent): boolean {
  return key.length === 1 && key !== ' ' && key !== '?' && !ctrlKey && !metaKey && !altKey;
}
