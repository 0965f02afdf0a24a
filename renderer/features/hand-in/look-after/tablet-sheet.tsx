import type { TabletView } from '../../../../src-core/contract/keeping-view.ts';
import type { StepProps } from '../../../client/steps.ts';
import { KEEPING } from '../../../text/english/keeping.ts';
import { LOOK_AFTER } from '../../../text/english/look-after.ts';
import { Button } from '../../../ui/button.tsx';
import { FolderButton } from '../../../ui/folder-button.tsx';
import { ProblemLines } from '../../../ui/problem-lines.tsx';
import { Sheet } from '../../../ui/sheet.tsx';
import { useTablet } from './use-tablet.ts';

/** What of a tablet is verified here and may be deleted there. Nothing is deleted from here. */
export function TabletSheet({ desk, deskView, names }: StepProps) {
  const tablet = useTablet(desk);
  const { folder, running, found, problems } = tablet;
  return (
    <Sheet label={LOOK_AFTER.tablet} className="col tablet">
      <header className="hd">
        <h2>{LOOK_AFTER.tablet}</h2>
      </header>
      <div className="pad">
        <p className="read">{LOOK_AFTER.tabletWhy}</p>
        <div className="rem">
          <FolderButton
            client={desk.client}
            deskView={deskView}
            purpose="tablet"
            isDisabled={running !== null}
            onChoose={(chosen) => void tablet.compare(chosen)}
          >
            {LOOK_AFTER.compare}
          </FolderButton>
          {running && <Button onPress={tablet.stop}>{LOOK_AFTER.stop}</Button>}
        </div>
        <p role="status" className={running ? 'pen' : 'vh'}>
          {running ? LOOK_AFTER.comparing(running.done, running.total) : ''}
        </p>
        <ProblemLines problems={problems} names={names} />
      </div>
      {found && folder && <Found found={found} place={folder.path} />}
    </Sheet>
  );
}

function Found({ found: { safe, missing }, place }: { readonly found: TabletView; readonly place: string }) {
  const bytes = safe.reduce((sum, { sizeBytes }) => sum + sizeBytes, 0);
  return (
    <>
      <div className="pad part" role="status">
        <p className="cap">{place}</p>
        <p className="read">{KEEPING.safe(safe.length, bytes)}</p>
        {missing.length > 0 && <p className="read need">{KEEPING.keep(missing.length)}</p>}
        {missing.length === 0 && safe.length > 0 && <p className="read">{KEEPING.allSafe}</p>}
      </div>
      {missing.length > 0 && <Files label={LOOK_AFTER.mustStay} paths={missing.map(({ path }) => path)} />}
      {safe.length > 0 && <Files label={LOOK_AFTER.mayGo} paths={safe.map(({ path }) => path)} />}
    </>
  );
}

function Files({ label, paths }: { readonly label: string; readonly paths: readonly string[] }) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
    <section className="raw" tabIndex={0} aria-label={label}>
      <b>{label}</b>
      {`\n${paths.join('\n')}`}
    </section>
  );
}
