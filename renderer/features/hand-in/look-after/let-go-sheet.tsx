import { useState } from 'react';
import type { Holdings } from '../../../../src-core/lesson-file/deletion-log.ts';
import type { StepProps } from '../../../client/steps.ts';
import { KEEPING } from '../../../text/english/keeping.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { describeProblem } from '../../../text/english/problems.ts';
import { Button } from '../../../ui/button.tsx';
import { Sheet } from '../../../ui/sheet.tsx';
import { StopNote } from '../../../ui/stop-note.tsx';
import { addUp, groupByPart } from './held-parts.ts';
import { type LettingGo, useLettingGo } from './use-letting-go.ts';

const SCOPES = ['films', 'all'] as const;

/** Letting the lesson go: which part, exactly what would go, and the deletion once that was looked at. */
export function LetGoSheet({
  clipsElsewhere,
  onDeleted,
  ...step
}: StepProps & { readonly clipsElsewhere: string | null; readonly onDeleted: () => void }) {
  const going = useLettingGo(step, onDeleted);
  const { scope, setScope, holdings, state, done, problems } = going;
  return (
    <Sheet label={LOOK_AFTER.letGo} className="col">
      <header className="hd">
        <h2>{LOOK_AFTER.letGo}</h2>
      </header>
      <fieldset className="kinds">
        <legend className="vh">{LOOK_AFTER.what}</legend>
        {SCOPES.map((each) => (
          <div key={each} className={`env ${each === scope ? 'on' : ''}`}>
            <label>
              <input
                type="radio"
                name="scope"
                value={each}
                checked={each === scope}
                disabled={state === 'listing' || state === 'deleting'}
                onChange={() => setScope(each)}
              />
              <span>
                <b>{LOOK_AFTER.scopes[each]}</b>
                {each === scope && <span className="cap">{LOOK_AFTER.scopeWhat[each]}</span>}
              </span>
            </label>
          </div>
        ))}
      </fieldset>
      {clipsElsewhere !== null && <p className="pad read">{LOOK_AFTER.inPlace(clipsElsewhere)}</p>}
      {problems.length > 0 && (
        <StopNote
          title={holdings ? LOOK_AFTER.notKept : state === 'failed' ? LOOK_AFTER.failed : LOOK_AFTER.notAll}
          advice={problems.map((problem) => describeProblem(problem, step.names))}
        />
      )}
      <p role="status" className={done ? 'read pad' : 'vh'}>
        {done ? KEEPING.deleted(done.files, done.bytes) : ''}
      </p>
      {holdings ? (
        <Listed going={going} holdings={holdings} />
      ) : (
        <div className="fin">
          <Button isDisabled={state === 'listing'} onPress={() => void going.list()}>
            {state === 'listing' ? LOOK_AFTER.asking : LOOK_AFTER.show}
          </Button>
        </div>
      )}
    </Sheet>
  );
}

function Listed({ going, holdings }: { readonly going: LettingGo; readonly holdings: Holdings }) {
  const [isTicked, setTicked] = useState(false);
  const { files, leftAlone } = holdings;
  const bytes = addUp(files);
  const isDeleting = going.state === 'deleting';
  return (
    <>
      <div className="pad part">
        <p className="read">
          {files.length === 0
            ? KEEPING.nothing
            : KEEPING.wouldGo(KEEPING.scopes[going.scope], files.length, bytes)}
        </p>
        <table className="print">
          <caption className="vh">{LOOK_AFTER.parts}</caption>
          <thead>
            <tr>
              {LOOK_AFTER.partHeads.map((head) => (
                <th key={head} scope="col">
                  {head}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {groupByPart(files).map((part) => (
              <tr key={part.name}>
                <th scope="row">{LOOK_AFTER.partNames[part.name] ?? part.name}</th>
                <td className="num">{part.files}</td>
                <td className="num">{LOOK_AFTER.size(part.bytes)}</td>
              </tr>
            ))}
          </tbody>
        </table>
        {leftAlone.length > 0 && <p className="cap">{KEEPING.leftAlone(leftAlone)}</p>}
        <p className="cap">{KEEPING.elsewhere}</p>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard */}
      <section className="raw paths" tabIndex={0} aria-label={LOOK_AFTER.list}>
        {files.map(({ path }) => path).join('\n')}
      </section>
      <div className="fin">
        <label>
          <input
            type="checkbox"
            className="ck"
            checked={isTicked}
            onChange={({ currentTarget }) => setTicked(currentTarget.checked)}
          />
          {LOOK_AFTER.looked}
        </label>
        <Button
          look="ink"
          className="write"
          isDisabled={!isTicked || isDeleting || files.length === 0}
          onPress={() => void going.letGo()}
        >
          {isDeleting ? LOOK_AFTER.deleting : LOOK_AFTER.delete(files.length, bytes)}
        </Button>
        <Button onPress={going.leave}>{LOOK_AFTER.leave}</Button>
      </div>
    </>
  );
}
