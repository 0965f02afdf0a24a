import type { SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { Button } from '../../ui/button.tsx';
import type { HandInMemory } from './use-memory.ts';

/** Destinations remembered on this machine, each a press away; the plan's own columns first. */
export function KnownMappings({
  memory,
  onUse,
}: {
  readonly memory: HandInMemory;
  readonly onUse: (columns: readonly SheetColumn[] | null, name: string | null) => void;
}) {
  return (
    <ul className="known" aria-label={HAND_IN.known}>
      <li>
        <Button onPress={() => onUse(null, null)}>{HAND_IN.asPlan}</Button>
      </li>
      {memory.mappings.map(({ name, columns }) => (
        <li key={name}>
          <Button onPress={() => onUse(columns, name)}>{name}</Button>
          <Button look="bare" label={HAND_IN.forget(name)} onPress={() => void memory.save(name, null)}>
            {HAND_IN.forgetShort}
          </Button>
        </li>
      ))}
    </ul>
  );
}
