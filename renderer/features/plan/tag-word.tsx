import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { WORDS } from '../../text/english/plan-step.ts';
import { Glyph } from '../../ui/glyph.tsx';
import type { WordProps } from './word.tsx';

/** A word that stands for some of a list: pressed, each can be put on and taken off below it. */
export function TagWord({
  label,
  shown,
  hint = WORDS.nothing,
  tags,
  chosen,
  onToggle,
}: WordProps & {
  readonly tags: readonly (readonly [code: string, name: string])[];
  readonly chosen: readonly string[];
  readonly onToggle: (code: string) => void;
}) {
  const toggle = (now: readonly string[]) => {
    for (const [code] of tags) if (now.includes(code) !== chosen.includes(code)) onToggle(code);
  };
  return (
    <MenuTrigger>
      <Button
        className={`word ${shown === '' ? 'pen' : ''}`}
        aria-label={shown === '' ? WORDS.add(label, hint) : WORDS.change(label, shown)}
      >
        {shown === '' ? hint : shown}
      </Button>
      <Popover className="choices" placement="bottom start" offset={2}>
        <Menu
          aria-label={label}
          selectionMode="multiple"
          selectedKeys={chosen}
          onSelectionChange={(keys) => keys !== 'all' && toggle([...keys].map(String))}
        >
          {tags.map(([code, name]) => (
            <MenuItem key={code} id={code} textValue={name}>
              {({ isSelected }) => (
                <>
                  <span className="tick">{isSelected && <Glyph name="tick" />}</span>
                  {name}
                </>
              )}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
