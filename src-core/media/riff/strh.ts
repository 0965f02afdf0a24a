import { viewBytes } from '../byte-view.ts';

/** AVI stream header — Microsoft, "AVISTREAMHEADER structure": type at 0, codec's four letters at 4. */
export function readStreamHeader(body: Uint8Array): { readonly isVideo: boolean; readonly codec: string } {
  const view = viewBytes(body);
  return { isVideo: view.letters(0) === 'vids', codec: view.letters(4).replace(/[^\x20-\x7e]/g, '.') };
}
