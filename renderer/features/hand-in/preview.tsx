import type { HandInPreview } from '../../../src-core/contract/hand-in-view.ts';
import type { PreviewProps } from './preview-props.ts';
import { SetPreview } from './set-preview.tsx';
import { SheetPreview } from './sheet-preview.tsx';

/** The proof of the print, by kind. */
export function Preview({ preview, ...props }: PreviewProps & { readonly preview: HandInPreview }) {
  return preview.kind === 'oneroster' ? (
    <SetPreview {...props} set={preview} />
  ) : (
    <SheetPreview {...props} preview={preview} />
  );
}
