import { useEffect, useState } from 'react';
import type { PlanChange } from '../../../src-core/lesson/compare-plans.ts';
import type { LessonDesk } from '../../client/lesson-desk.ts';
import type { LessonNames } from '../../client/lesson-names.ts';
import { describePlanChange } from '../../text/english/plan-changes.ts';
import { VERSIONS } from '../../text/english/plan-versions.ts';
import { Button } from '../../ui/button.tsx';
import { Glyph } from '../../ui/glyph.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import type { PlanDraft } from './plan-draft.ts';
import { useVersions } from './use-versions.ts';

/** How many earlier states are shown until more are asked for. */
const FIRST_SHOWN = 8;

/** The plan's earlier states: what is different now, and the way back. */
export function VersionSheet({
  desk,
  draft,
  planVersion,
  names,
}: {
  readonly desk: LessonDesk;
  readonly draft: PlanDraft;
  /** Stands for the plan as it is on the disk. */
  readonly planVersion: string;
  readonly names: LessonNames;
}) {
  const { versions, compare, read } = useVersions(desk, planVersion);
  const [opened, setOpened] = useState<string | null>(null);
  const [changes, setChanges] = useState<readonly PlanChange[] | null>(null);
  const [isAll, setAll] = useState(false);
  useEffect(() => {
    let isWanted = true;
    setChanges(null);
    if (opened !== null) void compare(opened).then((found) => isWanted && setChanges(found));
    return () => {
      isWanted = false;
    };
  }, [opened, compare]);
  const goBack = async (version: string) => {
    const plan = await read(version);
    if (plan) await draft.change(() => plan);
  };
  const shown = isAll ? versions : versions.slice(0, FIRST_SHOWN);
  return (
    <Sheet label={VERSIONS.head} className="versions">
      <header className="strip-head">
        <h2>{VERSIONS.head}</h2>
        <span className="cap">
          {versions.length > 0 ? VERSIONS.sentence(versions.length) : VERSIONS.none}
        </span>
      </header>
      <ol>
        {shown.map(({ version, savedMs }) => (
          <li key={version}>
            <button
              type="button"
              className="lk"
              aria-expanded={version === opened}
              onClick={() => setOpened(version === opened ? null : version)}
            >
              {VERSIONS.before(names.time(savedMs))}
            </button>
            {version === opened && (
              <section aria-label={VERSIONS.since(names.time(savedMs))}>
                <ul>
                  {changes?.map((change) => {
                    const words = describePlanChange(change);
                    return <li key={words}>{words}</li>;
                  })}
                  {changes?.length === 0 && <li>{VERSIONS.same}</li>}
                </ul>
                <Button onPress={() => void goBack(version)}>
                  <Glyph name="undo" /> {VERSIONS.goBack}
                </Button>
              </section>
            )}
          </li>
        ))}
      </ol>
      {shown.length < versions.length && (
        <Button look="bare" onPress={() => setAll(true)}>
          {VERSIONS.more(versions.length - shown.length)}
        </Button>
      )}
    </Sheet>
  );
}
