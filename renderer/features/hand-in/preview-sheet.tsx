import { useState } from 'react';
import type { GradeSheet, SheetColumn } from '../../../src-core/gradebook/grade-sheet.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { ColumnsSlip } from './columns-slip.tsx';
import { PreviewTable, RawLines } from './preview.tsx';
import type { Mappings } from './use-mappings.ts';

/** The proof of the print: the rows as mapped, and the file's own first lines. */
export function PreviewSheet({
  fileName,
  sheet,
  text,
  mapping,
  mappings,
  onUse,
}: {
  readonly fileName: string;
  readonly sheet: GradeSheet;
  readonly text: string;
  readonly mapping: string | null;
  readonly mappings: Mappings;
  readonly onUse: (columns: readonly SheetColumn[] | null, name: string | null) => void;
}) {
  const [isMapping, setMapping] = useState(false);
  return (
    <Sheet label={HAND_IN.preview} className="col pvw">
      <header className="hd">
        <h2>{fileName}</h2>
        <span className="cap">{HAND_IN.rows(sheet.rows.length)}</span>
        <Button className="push" onPress={() => setMapping(true)}>
          {HAND_IN.columns}
        </Button>
      </header>
      {isMapping && (
        <ColumnsSlip
          columns={sheet.columns.map(({ head, field }) => ({ head, field }))}
          {...{ mapping, mappings, onUse }}
          onClose={() => setMapping(false)}
        />
      )}
      <PreviewTable sheet={sheet} />
      <RawLines text={text} />
    </Sheet>
  );
}
