import { useState } from 'react';
import type { HandInPreview } from '../../../src-core/contract/hand-in-view.ts';
import { ACCOUNT } from '../../text/english/account.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { Button } from '../../ui/button.tsx';
import { Pick } from '../../ui/pick.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { AccountTable } from './account-table.tsx';
import { ColumnsSlip } from './columns-slip.tsx';
import type { PreviewProps } from './preview-props.ts';
import { PreviewTable, RawLines } from './preview-table.tsx';

const SHEETS = (['marks', 'account'] as const).map((value) => ({ value, name: ACCOUNT.sheets[value] }));

/** The rows as mapped; of a CSV the file's own first lines, of a workbook its second sheet. */
export function SheetPreview({
  fileName,
  choice,
  preview,
}: PreviewProps & { readonly preview: Extract<HandInPreview, { kind: 'csv' | 'xlsx' }> }) {
  const [isMapping, setMapping] = useState(false);
  const [shown, setShown] = useState<'marks' | 'account'>('marks');
  const { sheet } = preview;
  const account = preview.kind === 'xlsx' && shown === 'account' ? preview.account : null;
  return (
    <Sheet label={HAND_IN.preview} className="col pvw">
      <header className="hd">
        <h2>{fileName}</h2>
        <span className="cap">{HAND_IN.rows((account ?? sheet).rows.length)}</span>
        <span className="push" />
        {!account && <Button onPress={() => setMapping(true)}>{HAND_IN.columns}</Button>}
      </header>
      {preview.kind === 'xlsx' && (
        <div className="paper-order">
          <Pick label={HAND_IN.whichSheet} choices={SHEETS} value={shown} onChange={setShown} />
        </div>
      )}
      {isMapping && (
        <ColumnsSlip
          columns={sheet.columns.map(({ head, field }) => ({ head, field }))}
          mapping={choice.mapping?.name ?? null}
          memory={choice.memory}
          onUse={choice.useColumns}
          onClose={() => setMapping(false)}
        />
      )}
      {account ? <AccountTable account={account} /> : <PreviewTable sheet={sheet} />}
      {preview.kind === 'csv' && <RawLines text={preview.text} />}
    </Sheet>
  );
}
