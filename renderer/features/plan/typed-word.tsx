import { useId, useState } from 'react';
import { WORDS } from '../../text/english/plan-step.ts';
import type { NumberRange } from './plan-edits.ts';
import { type CloseWord, Word, type WordProps } from './word.tsx';

interface TypedProps extends WordProps {
  readonly type: 'number' | 'time' | 'text' | 'date' | 'url';
  readonly value: string;
  readonly range?: NumberRange;
  /** Emptied, it stands for nothing; otherwise some text must stay. */
  readonly isOptional?: boolean;
  /** Takes the line that it stands on. */
  readonly isWide?: boolean;
  /** The text without blanks around it; called only where it differs. */
  readonly onDecide: (value: string) => void;
}

/** A word that is typed: a number within a range, a time, a day, or a sentence. What cannot be stays with its reason. */
export function TypedWord(props: TypedProps) {
  const { label, shown, hint, at } = props;
  return (
    <Word
      {...{ label, shown }}
      {...(hint !== undefined && { hint })}
      {...(at !== undefined && { at })}
      edit={(close) => <TypedField {...props} close={close} />}
    />
  );
}

function TypedField({
  label,
  type,
  value,
  range,
  isOptional = false,
  isWide = false,
  close,
  onDecide,
}: TypedProps & { readonly close: CloseWord }) {
  const [reason, setReason] = useState<string | null>(null);
  const reasonId = useId();
  const decide = (input: HTMLInputElement, isByKey: boolean) => {
    const text = input.value.trim();
    const wrong = findReason(input, text, { range, isOptional });
    setReason(wrong);
    if (wrong !== null) return;
    close(isByKey);
    if (text !== value) onDecide(text);
  };
  return (
    <span className={`typed ${isWide ? 'wide' : ''}`}>
      <input
        // biome-ignore lint/a11y/noAutofocus: the field takes the place of the word that was pressed
        autoFocus
        className={`as-${type}`}
        aria-label={label}
        aria-invalid={reason !== null}
        aria-describedby={reason === null ? undefined : reasonId}
        type={type === 'url' ? 'text' : type}
        inputMode={type === 'url' ? 'url' : undefined}
        defaultValue={value}
        maxLength={200}
        step="any"
        onFocus={({ currentTarget }) => currentTarget.select()}
        onBlur={({ currentTarget }) => decide(currentTarget, false)}
        onKeyDown={(event) => {
          if (event.key === 'Enter') {
            // Else the same press would open the word anew that takes the focus back.
            event.preventDefault();
            decide(event.currentTarget, true);
          }
          if (event.key !== 'Escape') return;
          event.stopPropagation();
          close(true);
        }}
      />
      {reason !== null && (
        <span className="need" id={reasonId} role="alert">
          {reason}
        </span>
      )}
    </span>
  );
}

/** Why what was typed cannot be; null: it can. */
function findReason(
  input: HTMLInputElement,
  text: string,
  { range, isOptional }: { readonly range: NumberRange | undefined; readonly isOptional: boolean },
): string | null {
  if (input.validity.badInput) return WORDS.unreadable;
  if (text === '') return isOptional ? null : WORDS.needed;
  if (!range) return null;
  const number = Number(text);
  if (number < range.min || number > range.max) return WORDS.outOfRange(range.min, range.max);
  return Number.isInteger(range.step) && !Number.isInteger(number) ? WORDS.whole : null;
}
