import './hand-in-kinds.css';
import './hand-in.css';
import type { ComponentType, ReactNode } from 'react';
import type { StepProps } from '../../client/steps.ts';
import { LOOK_AFTER } from '../../text/english/look-after.ts';
import { SECOND } from '../../text/english/second-marking.ts';
import { Pick } from '../../ui/pick.tsx';
import { LookAfter } from './look-after/look-after.tsx';
import { MarksPage } from './marks-page.tsx';
import { SecondMarking } from './second/second-marking.tsx';

/** A page of Hand in, as the address names it. */
type Page = 'marks' | 'second-marking' | 'look-after';

const PAGES: readonly { readonly value: Page; readonly name: string }[] = [
  { value: 'marks', name: LOOK_AFTER.marksPage },
  { value: 'second-marking', name: SECOND.page },
  { value: 'look-after', name: LOOK_AFTER.page },
];

const SHEETS: Readonly<Record<Page, ComponentType<StepProps & { readonly tools: ReactNode }>>> = {
  marks: MarksPage,
  'second-marking': SecondMarking,
  'look-after': LookAfter,
};

/** Hand in: the marks, whether they were fair, and what is kept of the lesson afterwards. */
export function HandIn(props: StepProps) {
  const page = PAGES.find(({ value }) => value === props.target)?.value ?? 'marks';
  const show = (next: Page) => props.go('hand-in', next === 'marks' ? null : next);
  const Sheets = SHEETS[page];
  return (
    <Sheets
      {...props}
      tools={<Pick label={LOOK_AFTER.pages} choices={PAGES} value={page} onChange={show} />}
    />
  );
}
