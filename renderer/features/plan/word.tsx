import { type ReactNode, useEffect, useRef, useState } from 'react';
import { PLAN } from '../../text/english/plan-step.ts';
import type { NumberRange } from './plan-edits.ts';

interface WordProps {
  /** What the word stands for, for its name. */
  readonly label: string;
  /** As it stands in the sentence. */
  readonly shown: string;
}

/** An underlined word of a sentence: pressed, it becomes a field; Enter or leaving decides, Escape gives up. */
function Word({
  label,
  shown,
  edit,
}: WordProps & { readonly edit: (close: (isDone: boolean) => void) => ReactNode }) {
  const [isEdited, setEdited] = useState(false);
  const button = useRef<HTMLButtonElement>(null);
  const wasEdited = useRef(false);
  useEffect(() => {
    if (wasEdited.current && !isEdited) button.current?.focus();
    wasEdited.current = isEdited;
  }, [isEdited]);
  if (isEdited) return edit(() => setEdited(false));
  return (
    <button
      ref={button}
      type="button"
      className="word"
      aria-label={PLAN.change(label, shown)}
      onClick={() => setEdited(true)}
    >
      {shown}
    </button>
  );
}

/** A word that is one of a few. */
export function ChoiceWord<Value extends string>({
  choices,
  value,
  onChoose,
  ...word
}: WordProps & {
  readonly choices: readonly (readonly [Value, string])[];
  readonly value: Value;
  readonly onChoose: (value: Value) => void;
}) {
  return (
    <Word
      {...word}
      edit={(close) => (
        <select
          // biome-ignore lint/a11y/noAutofocus: the field takes the place of the word that was pressed
          autoFocus
          aria-label={word.label}
          value={value}
          onChange={({ currentTarget }) => {
            close(true);
            onChoose(currentTarget.value as Value);
          }}
          onBlur={() => close(false)}
          onKeyDown={({ key }) => key === 'Escape' && close(false)}
        >
          {choices.map(([one, name]) => (
            <option key={one} value={one}>
              {name}
            </option>
          ))}
        </select>
      )}
    />
  );
}

/** A word that is typed: a number within a range, a local time, or a few letters. */
export function TypedWord({
  type,
  value,
  range,
  onDecide,
  ...word
}: WordProps & {
  readonly type: 'number' | 'time' | 'text';
  readonly value: string;
  readonly range?: NumberRange;
  readonly onDecide: (value: string) => void;
}) {
  return (
    <Word
      {...word}
      edit={(close) => (
        <input
          // biome-ignore lint/a11y/noAutofocus: the field takes the place of the word that was pressed
          autoFocus
          aria-label={word.label}
          type={type}
          defaultValue={value}
          required
          {...range}
          onFocus={({ currentTarget }) => currentTarget.select()}
          onBlur={({ currentTarget }) => {
            close(true);
            const isRight = currentTarget.validity.valid || currentTarget.validity.stepMismatch;
            if (isRight && currentTarget.value !== value) onDecide(currentTarget.value);
          }}
          onKeyDown={(event) => {
            if (event.key === 'Enter') event.currentTarget.blur();
            if (event.key === 'Escape') {
              event.currentTarget.value = value;
              event.currentTarget.blur();
            }
          }}
        />
      )}
    />
  );
}
