import { useLayoutEffect, useRef, useState } from 'react';
import { readPreferences } from '../preferences.ts';
import { getCombo, isSingleSign, type KeyId, readCombo } from './key-table.ts';

/** What each key does here; false: not now, so the key goes on to whoever else wants it. */
export type KeyBindings = { readonly [Id in KeyId]?: () => unknown };

/** What is bound now, lowest first; `turn` rises in the order of first drawing, a part of the page after its whole. */
const layers: { readonly turn: number; current: KeyBindings }[] = [];
let turns = 0;

/**
 * Binds keys for as long as the component is shown; the latest comer goes first. Single signs rest while a text
 * field has the focus, while a dialog is open over the page, and where the teacher has switched them off. Enter,
 * Space and arrows are left to the control that has the focus and needs them.
 */
export function useKeys(bindings: KeyBindings): void {
  // Effects run in parts before their whole: a page that opens at once on a step would let the whole go first.
  const [turn] = useState(() => {
    turns += 1;
    return turns;
  });
  const layer = useRef({ turn, current: bindings }).current;
  layer.current = bindings;
  // Before it is painted: what can be seen hears its keys.
  useLayoutEffect(() => {
    layers.push(layer);
    layers.sort((one, other) => one.turn - other.turn);
    if (layers.length === 1) document.addEventListener('keydown', hearKey);
    return () => {
      layers.splice(layers.indexOf(layer), 1);
      if (layers.length === 0) document.removeEventListener('keydown', hearKey);
    };
  }, [layer]);
}

/** Does what a key does on the screen that is shown, for a menu; false where no screen wants it now. */
export function runKey(id: KeyId): boolean {
  return layers.toReversed().some(({ current }) => {
    const run = current[id];
    return run !== undefined && run() !== false;
  });
}

/** Whether a press is this key's, for a part of the page that hears its own keys. */
export function isKey(
  id: KeyId,
  event: Parameters<typeof readCombo>[0] & { readonly target: EventTarget },
): boolean {
  const { areSingleKeysOn, keys } = readPreferences();
  const combo = readCombo(event);
  if (combo !== getCombo(id, keys)) return false;
  return !isSingleSign(combo) || (areSingleKeysOn && !isTextField(event.target));
}

/** Whether the teacher is writing there, so that taking back means what was typed. */
export function isTextField(target: EventTarget | null): boolean {
  return target instanceof Element && target.closest(TEXT_FIELDS) !== null;
}

function hearKey(event: KeyboardEvent): void {
  if (event.defaultPrevented || event.isComposing) return;
  const { areSingleKeysOn, keys } = readPreferences();
  const combo = readCombo(event);
  if (isTaken(event.target, combo) || (isSingleSign(combo) && !areSingleKeysOn)) return;
  for (const { current } of layers.toReversed()) {
    for (const [id, run] of Object.entries(current)) {
      if (getCombo(id as KeyId, keys) !== combo || run() === false) continue;
      event.preventDefault();
      return;
    }
  }
}

const TEXT_FIELDS =
  'input:not([type=checkbox], [type=radio], [type=range], [type=button]), textarea, select, [contenteditable=true]';
const PRESSED_BY_ENTER = 'button, a[href], summary, [role=button], [role=option], [role=menuitem]';
const MOVED_BY_ARROWS =
  'input, [role=radiogroup] *, [role=listbox] *, [role=menu] *, [role=slider], [role=grid] *';

/** Whether the focused control needs the key itself. Marked with `data-keys="through"`, it needs none. */
function isTaken(target: EventTarget | null, combo: string): boolean {
  if (!(target instanceof Element) || target.closest('[data-keys=through]')) return false;
  if (/^ctrl\+[\do]$/.test(combo)) return false;
  if (isTextField(target) || target.closest('[aria-modal=true]')) return true;
  if (combo === 'Enter' || combo === ' ') return target.closest(PRESSED_BY_ENTER) !== null;
  return combo.startsWith('Arrow') && target.closest(MOVED_BY_ARROWS) !== null;
}
