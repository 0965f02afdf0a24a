/** How far a long piece of work has come. */
export interface Progress {
  readonly step:
    | 'read'
    | 'cards'
    | 'watch'
    | 'count'
    | 'copy'
    | 'film'
    | 'proxy'
    | 'stills'
    | 'print'
    | 'compare'
    | 'figures';
  readonly done: number;
  readonly total: number;
  /** The same in bytes, where bytes are moved. */
  readonly doneBytes?: number;
  readonly totalBytes?: number;
}
