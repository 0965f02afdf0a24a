import type { ReactNode } from 'react';
import { Button, type KeyboardEvent, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { WORDS } from '../../text/english/plan-step.ts';
import type { WordProps } from './word.tsx';

/** A word that is one of a few: pressed, they stand below it; a first letter typed at it chooses at once. */
export function ChoiceWord<Value extends string>({
  label,
  shown,
  hint = WORDS.nothing,
  at,
  choices,
  value,
  onChoose,
  children,
}: WordProps & {
  readonly choices: readonly (readonly [Value, string])[];
  /** Null: none of them yet. */
  readonly value: Value | null;
  readonly onChoose: (value: Value) => void;
  /** Drawn in the place of the word. */
  readonly children?: ReactNode;
}) {
  const choose = (chosen: Value) => chosen !== value && onChoose(chosen);
  const typeAt = (event: KeyboardEvent) => {
    const found = findTyped(choices, value, event);
    if (found === null) event.continuePropagation();
    else choose(found);
  };
  return (
    <MenuTrigger>
      <Button
        className={`word ${shown === '' ? 'pen' : ''}`}
        aria-label={shown === '' ? WORDS.add(label, hint) : WORDS.change(label, shown)}
        onKeyDown={typeAt}
        {...(at !== undefined && { 'data-at': at })}
      >
        {children ?? (shown === '' ? hint : shown)}
      </Button>
      <Popover className="choices" placement="bottom start" offset={2}>
        <Menu
          aria-label={label}
          selectionMode="single"
          selectedKeys={value === null ? [] : [value]}
          onAction={(key) => choose(key as Value)}
        >
          {choices.map(([one, name]) => (
            <MenuItem key={one} id={one} textValue={name}>
              {name}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** The next choice after the present one that begins with the sign that was typed; null: none, or no sign. */
function findTyped<Value extends string>(
  choices: readonly (readonly [Value, string])[],
  value: Value | null,
  { key, ctrlKey, metaKey, altKey }: KeyboardEvent,
): Value | null {
  if (key.length !== 1 || key === ' ' || ctrlKey || metaKey || altKey) return null;
  const now = choices.findIndex(([one]) => one === value);
  const inTurn = [...choices.slice(now + 1), ...choices.slice(0, now + 1)];
  return inTurn.find(([, name]) => name.toLowerCase().startsWith(key.toLowerCase()))?.[0] ?? null;
}
