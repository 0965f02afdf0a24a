import { useState } from 'react';
import type { SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
import type { SheetField } from '../../../src-core/lesson/plan.ts';
import { FIELD_NAMES, HAND_IN } from '../../text/english/hand-in.ts';
import { Button } from '../../ui/button.tsx';
import { SlipDialog } from '../../ui/slip-dialog.tsx';
import { KnownMappings } from './known-mappings.tsx';
import type { HandInMemory } from './use-memory.ts';

type Line = SheetColumn & { readonly id: number };

const FIELDS = Object.entries(FIELD_NAMES) as readonly (readonly [SheetField, string])[];

/** The columns of one destination: its headings, what stands in each, their order; remembered under a name. */
export function ColumnsSlip({
  columns,
  mapping,
  memory,
  onUse,
  onClose,
}: {
  readonly columns: readonly SheetColumn[];
  readonly mapping: string | null;
  readonly memory: HandInMemory;
  /** Null columns: the plan's. */
  readonly onUse: (columns: readonly SheetColumn[] | null, mapping: string | null) => void;
  readonly onClose: () => void;
}) {
  const [lines, setLines] = useState<readonly Line[]>(() => columns.map((column, id) => ({ ...column, id })));
  const [name, setName] = useState(mapping ?? '');
  const change = (id: number, part: Partial<SheetColumn>) =>
    setLines((now) => now.map((line) => (line.id === id ? { ...line, ...part } : line)));
  const add = () =>
    setLines((now) => [
      ...now,
      { id: Math.max(-1, ...now.map(({ id }) => id)) + 1, head: FIELD_NAMES.points, field: 'points' },
    ]);
  const use = (to: readonly SheetColumn[] | null, called: string | null) => {
    onUse(to, called);
    onClose();
  };
  return (
    <SlipDialog title={HAND_IN.columnsTitle} onClose={onClose}>
      <KnownMappings memory={memory} onUse={use} />
      <form
        className="columns"
        onSubmit={(event) => {
          event.preventDefault();
          const mapped = lines.map(({ head, field }) => ({ head: head.trim(), field }));
          const called = name.trim();
          if (called !== '') void memory.save(called, mapped);
          use(mapped, called === '' ? null : called);
        }}
      >
        <p className="cap">{HAND_IN.columnsSentence}</p>
        <ol>
          {lines.map((line, at) => (
            <ColumnLine
              key={line.id}
              {...{ line, at }}
              onChange={(part) => change(line.id, part)}
              onUp={() => setLines((now) => moveUp(now, at))}
              onRemove={() => setLines((now) => now.filter(({ id }) => id !== line.id))}
            />
          ))}
        </ol>
        <Button onPress={add}>{HAND_IN.add}</Button>
        <label>
          {HAND_IN.remember}
          <input
            value={name}
            maxLength={80}
            placeholder={HAND_IN.rememberHint}
            onChange={({ currentTarget }) => setName(currentTarget.value)}
          />
        </label>
        <button type="submit" className="btn ink" disabled={lines.length === 0}>
          {HAND_IN.use}
        </button>
      </form>
    </SlipDialog>
  );
}

function moveUp(lines: readonly Line[], at: number): readonly Line[] {
  const [line, before] = [lines[at], lines[at - 1]];
  return line && before ? lines.with(at - 1, line).with(at, before) : lines;
}

function ColumnLine({
  line,
  at,
  onChange,
  onUp,
  onRemove,
}: {
  readonly line: Line;
  readonly at: number;
  readonly onChange: (part: Partial<SheetColumn>) => void;
  readonly onUp: () => void;
  readonly onRemove: () => void;
}) {
  return (
    <li>
      <input
        required
        maxLength={200}
        aria-label={`${HAND_IN.columnLabel(at)}: ${HAND_IN.head}`}
        value={line.head}
        onChange={({ currentTarget }) => onChange({ head: currentTarget.value })}
      />
      <select
        aria-label={`${HAND_IN.columnLabel(at)}: ${HAND_IN.field}`}
        value={line.field}
        onChange={({ currentTarget }) => onChange({ field: currentTarget.value as SheetField })}
      >
        {FIELDS.map(([field, called]) => (
          <option key={field} value={field}>
            {called}
          </option>
        ))}
      </select>
      <Button look="bare" label={HAND_IN.up(line.head)} isDisabled={at === 0} onPress={onUp}>
        {HAND_IN.upShort}
      </Button>
      <Button look="bare" label={HAND_IN.remove(line.head)} onPress={onRemove}>
        {HAND_IN.removeShort}
      </Button>
    </li>
  );
}
