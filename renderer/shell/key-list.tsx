import { useState } from 'react';
import { Dialog, Heading, Modal, ModalOverlay } from 'react-aria-components';
import { CLASS_CLOCK } from '../text/english/class-clock.ts';
import { KEY_LIST, KEY_WORDS, nameCombo } from '../text/english/keys.ts';
import { CLOSE, STEP_NAMES } from '../text/english/window.ts';
import { Button } from '../ui/button.tsx';
import {
  findClash,
  getCombo,
  KEY_IDS,
  KEY_TABLE,
  type KeyId,
  type KeyPlace,
  readCombo,
} from '../ui/keys/key-table.ts';
import { changePreferences, usePreferences } from '../ui/preferences.ts';

const PLACES: readonly KeyPlace[] = [
  'everywhere',
  'plan',
  'bring-in',
  'line-up',
  'review',
  'scores',
  'hand-in',
  'class-clock',
];

const PLACE_NAMES: Readonly<Record<KeyPlace, string>> = {
  ...STEP_NAMES,
  everywhere: KEY_LIST.everywhere,
  'class-clock': CLASS_CLOCK.title,
};

/** Every key, each to be bound otherwise, and single letters to be switched off (WCAG 2.2, 2.1.4). */
export function KeyList({ onClose }: { readonly onClose: () => void }) {
  const { areSingleKeysOn, keys } = usePreferences();
  const [refusal, setRefusal] = useState('');
  return (
    <ModalOverlay className="veil" isOpen isDismissable onOpenChange={(isOpen) => !isOpen && onClose()}>
      <Modal className="sheet key-sheet">
        <Dialog aria-label={KEY_LIST.title}>
          <header className="head">
            <Heading slot="title">{KEY_LIST.title}</Heading>
            <p>{KEY_LIST.sentence}</p>
            <label className="push">
              <input
                type="checkbox"
                checked={areSingleKeysOn}
                onChange={({ target }) => changePreferences({ areSingleKeysOn: target.checked })}
              />{' '}
              {KEY_LIST.singleKeys}
            </label>
            <Button
              onPress={() => changePreferences({ keys: {} })}
              isDisabled={Object.keys(keys).length === 0}
            >
              {KEY_LIST.reset}
            </Button>
            <Button look="ink" onPress={onClose} isAutoFocused>
              {CLOSE}
            </Button>
          </header>
          <p role="alert" className={refusal === '' ? 'vh' : 'refusal'}>
            {refusal}
          </p>
          <div className="key-columns">
            {PLACES.map((place) => (
              <section key={place}>
                <h3>{PLACE_NAMES[place]}</h3>
                <dl>
                  {KEY_IDS.filter((id) => KEY_TABLE[id].place === place).map((id) => (
                    <KeyRow key={id} id={id} onRefused={setRefusal} />
                  ))}
                </dl>
              </section>
            ))}
          </div>
        </Dialog>
      </Modal>
    </ModalOverlay>
  );
}

function KeyRow({ id, onRefused }: { readonly id: KeyId; readonly onRefused: (why: string) => void }) {
  const { keys } = usePreferences();
  const [isHearing, setHearing] = useState(false);
  const combo = nameCombo(getCombo(id, keys));
  const hear = (event: React.KeyboardEvent) => {
    if (!isHearing || ['Shift', 'Control', 'Alt', 'Meta', 'Tab'].includes(event.key)) return;
    event.preventDefault();
    event.stopPropagation();
    setHearing(false);
    if (event.key === 'Escape') return onRefused('');
    const wanted = readCombo(event);
    const clash = findClash(id, wanted, keys);
    onRefused(clash ? KEY_LIST.taken(nameCombo(wanted), KEY_WORDS[clash] ?? clash) : '');
    if (!clash) changePreferences({ keys: { ...keys, [id]: wanted } });
  };
  const words = KEY_WORDS[id] ?? id;
  return (
    <div>
      <dt>
        <button
          type="button"
          className="key"
          aria-label={KEY_LIST.change(words, combo)}
          onClick={() => setHearing(true)}
          onKeyDown={hear}
          onBlur={() => setHearing(false)}
        >
          {isHearing ? KEY_LIST.press : combo}
        </button>
      </dt>
      <dd>{words}</dd>
    </div>
  );
}
