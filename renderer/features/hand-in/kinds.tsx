import { HAND_IN } from '../../text/english/hand-in.ts';
import { Pick } from '../../ui/pick.tsx';
import type { HandInKind } from '../../ui/preferences.ts';
import type { HandInChoice } from './use-choice.ts';

const KINDS = Object.keys(HAND_IN.kinds) as readonly HandInKind[];

const VERSIONS = (['1.2', '1.1'] as const).map((value) => ({ value, name: HAND_IN.versions[value] }));

/** The kinds of hand-in, one of them chosen. */
export function Kinds({ choice }: { readonly choice: HandInChoice }) {
  const { kind, version, mapping, setKind, setVersion } = choice;
  return (
    <fieldset className="kinds">
      <legend className="vh">{HAND_IN.what}</legend>
      {KINDS.map((each) => (
        <div key={each} className={`env ${each === kind ? 'on' : ''}`}>
          <label>
            <input
              type="radio"
              name="kind"
              value={each}
              checked={each === kind}
              onChange={() => setKind(each)}
            />
            <span>
              <b>{HAND_IN.kinds[each].name}</b>
              {each === kind && (
                <span className="cap">
                  {HAND_IN.kinds[each].what}
                  {(each === 'csv' || each === 'xlsx') && ` ${HAND_IN.columnsAs(mapping?.name ?? null)}`}
                </span>
              )}
            </span>
          </label>
          {each === 'oneroster' && each === kind && (
            <Pick label={HAND_IN.version} choices={VERSIONS} value={version} onChange={setVersion} />
          )}
        </div>
      ))}
    </fieldset>
  );
}
