import { useState } from 'react';
import type { HandInPreview } from '../../../src-core/contract/hand-in-view.ts';
import { HAND_IN } from '../../text/english/hand-in.ts';
import { SET } from '../../text/english/hand-in-set.ts';
import { describeProblem } from '../../text/english/problems.ts';
import { Sheet } from '../../ui/sheet.tsx';
import type { PreviewProps } from './preview-props.ts';
import { RuleList } from './rule-list.tsx';
import { SchoolSet } from './school-set.tsx';
import { SetFiles } from './set-files.tsx';

/** A OneRoster set: the school's set that it is built on, the rules that it is held to by name, and its files. */
export function SetPreview({
  fileName,
  choice,
  draft,
  desk,
  deskView,
  names,
  set,
}: PreviewProps & { readonly set: Extract<HandInPreview, { kind: 'oneroster' }> }) {
  const { files, rules, school } = set;
  const [shown, setShown] = useState('results.csv');
  const notes = draft.problems
    .filter(({ code }) => code !== 'bundle-rule-broken' && code !== 'bundle-school-missing')
    .map((problem) => describeProblem(problem, names));
  return (
    <Sheet label={HAND_IN.preview} className="col pvw">
      <header className="hd">
        <h2>{fileName}</h2>
        <span className="cap">{files ? SET.files(files.length) : SET.noFiles}</span>
      </header>
      <div className="set">
        <SchoolSet {...{ choice, school, desk, deskView }} />
        {notes.length > 0 && (
          <ul className={files ? 'notes' : 'notes need'} aria-label={SET.notes}>
            {notes.map(({ what, todo }) => (
              <li key={what}>
                <b>{what}</b> {todo}
              </li>
            ))}
          </ul>
        )}
        {rules && <RuleList rules={rules} version={choice.version} />}
        {files && <SetFiles files={files} shown={shown} onShow={setShown} />}
      </div>
    </Sheet>
  );
}
