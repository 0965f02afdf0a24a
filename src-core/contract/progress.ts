/** How far a long piece of work has come. */
export interface Progress {
  readonly step: 'read' | 'cards' | 'copy' | 'film';
  readonly done: number;
  readonly total: number;
}
