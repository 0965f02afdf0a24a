import { useState } from 'react';
import type { PackOrder, PackPart } from '../../../src-core/printing/pack.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { list } from '../../text/english/amounts.ts';
import { PACK_NAMES } from '../../text/english/paper.ts';
import { PRINT } from '../../text/english/print-step.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Button } from '../../ui/button.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { StopNote } from '../../ui/stop-note.tsx';
import { ChoiceWord } from './choice-word.tsx';
import { TagWord } from './tag-word.tsx';
import type { PrintPack } from './use-print-pack.ts';

const PARTS = Object.keys(PACK_NAMES) as PackPart[];
const TITLES = PARTS.map((part) => [part, PACK_NAMES[part].title] as const);

/** The print pack as one sentence with its words to change, and what was written. */
export function PrintSheet({ pack, names }: { readonly pack: PrintPack; readonly names: LessonNames }) {
  const [order, setOrder] = useState<PackOrder>({ parts: PARTS, paper: 'a4', isGrey: false });
  const { state, problems, paths, pageCount } = pack;
  const advice = problems.map((problem) => describeProblem(problem, names));
  const isThere = problems.some(({ code }) => code === 'file-exists');
  const toggle = (part: string) =>
    setOrder((now) => ({
      ...now,
      parts: PARTS.filter((one) => now.parts.includes(one) !== (one === part)),
    }));
  return (
    <Sheet label={PRINT.head} className="says-sheet">
      <header className="strip-head">
        <h2>{PRINT.head}</h2>
        <span className="push" />
        <Button
          isDisabled={state === 'writing' || order.parts.length === 0}
          onPress={() => void pack.write(order, false)}
        >
          {state === 'writing' ? PRINT.writing : PRINT.write}
        </Button>
      </header>
      <p className="says">
        {PRINT.sentence[0]}{' '}
        <TagWord
          label={PRINT.partsLabel}
          shown={describeParts(order.parts)}
          hint={PRINT.noParts}
          tags={TITLES}
          chosen={order.parts}
          onToggle={toggle}
        />{' '}
        {PRINT.sentence[1]}{' '}
        <ChoiceWord
          label={PRINT.paperLabel}
          shown={PRINT.papers[order.paper]}
          choices={[
            ['a4', PRINT.papers.a4],
            ['letter', PRINT.papers.letter],
          ]}
          value={order.paper}
          onChoose={(paper) => setOrder((now) => ({ ...now, paper }))}
        />
        {PRINT.sentence[2]}{' '}
        <ChoiceWord
          label={PRINT.inkLabel}
          shown={PRINT.inks[order.isGrey ? 'grey' : 'colour']}
          choices={[
            ['colour', PRINT.inks.colour],
            ['grey', PRINT.inks.grey],
          ]}
          value={order.isGrey ? 'grey' : 'colour'}
          onChoose={(ink) => setOrder((now) => ({ ...now, isGrey: ink === 'grey' }))}
        />
        {PRINT.sentence[3]}
      </p>
      {advice.length > 0 && (
        <StopNote title={state === 'failed' ? PRINT.failed : PRINT.incomplete} advice={advice}>
          {isThere && <Button onPress={() => void pack.write(order, true)}>{PRINT.replace}</Button>}
        </StopNote>
      )}
      <p role="status" className={state === 'written' ? 'read' : 'vh'}>
        {state === 'written' ? PRINT.written(pageCount, paths) : ''}
      </p>
    </Sheet>
  );
}

function describeParts(parts: readonly PackPart[]): string {
  if (parts.length === PARTS.length) return PRINT.allParts;
  return list(parts.map((part) => PACK_NAMES[part].title));
}
