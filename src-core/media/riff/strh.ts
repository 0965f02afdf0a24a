import { readLetters } from '../byte-numbers.ts';

/** AVI stream header — Microsoft, "AVISTREAMHEADER structure": type at 0, codec's four letters at 4. */
export function readStreamHeader(body: Uint8Array): { readonly isVideo: boolean; readonly codec: string } {
  return {
    isVideo: readLetters(body, 0) === 'vids',
    codec: readLetters(body, 4).replace(/[^\x20-\x7e]/g, '.'),
  };
}
