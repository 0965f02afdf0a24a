import './hand-in-kinds.css';
import './hand-in.css';
import type { StepProps } from '../../client/steps.ts';
import { LOOK_AFTER } from '../../text/english/look-after.ts';
import { Pick } from '../../ui/pick.tsx';
import { LookAfter } from './look-after/look-after.tsx';
import { MarksPage } from './marks-page.tsx';

const PAGES = [
  { value: 'marks', name: LOOK_AFTER.marksPage },
  { value: 'look-after', name: LOOK_AFTER.page },
] as const;

/** Hand in: the marks, and what is kept of the lesson afterwards. */
export function HandIn(props: StepProps) {
  const page = props.target === 'look-after' ? 'look-after' : 'marks';
  const show = (next: 'marks' | 'look-after') => props.go('hand-in', next === 'marks' ? null : next);
  const tools = <Pick label={LOOK_AFTER.pages} choices={PAGES} value={page} onChange={show} />;
  return page === 'marks' ? <MarksPage {...props} tools={tools} /> : <LookAfter {...props} tools={tools} />;
}
