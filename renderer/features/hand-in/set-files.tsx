import type { SetFileView } from '../../../src-core/contract/hand-in-view.ts';
import { SET } from '../../text/english/hand-in-set.ts';

/** The files of a set, each a press away as it will stand in the archive. */
export function SetFiles({
  files,
  shown,
  onShow,
}: {
  readonly files: readonly SetFileView[];
  readonly shown: string;
  readonly onShow: (name: string) => void;
}) {
  const file = files.find(({ name }) => name === shown) ?? files[0];
  return (
    <div className="set-files">
      <fieldset aria-label={SET.fileList}>
        {files.map(({ name, rows }) => (
          <button
            key={name}
            type="button"
            className="btn"
            aria-pressed={name === file?.name}
            onClick={() => onShow(name)}
          >
            {name} <small>{rows}</small>
          </button>
        ))}
      </fieldset>
      {file && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keyboard
        <section className="raw" tabIndex={0} aria-label={SET.asWritten(file.name)}>
          {file.text}
        </section>
      )}
    </div>
  );
}
