import { nameCombo } from '../text/english/keys.ts';
import { getCombo, type KeyId } from './keys/key-table.ts';
import { usePreferences } from './preferences.ts';

/** The cap of a key as it is bound now; hidden from screen readers, which read the list of keys instead. */
export function KeyCap({ id }: { readonly id: KeyId }) {
  const { keys, areSingleKeysOn } = usePreferences();
  const combo = getCombo(id, keys);
  if (!areSingleKeysOn && combo.length === 1) return null;
  return (
    <span className="key" aria-hidden="true">
      {nameCombo(combo)}
    </span>
  );
}
