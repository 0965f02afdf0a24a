import type { Mark } from './marks.ts';

/** Something that stands on one page whole. */
export interface Block {
  /** In millimetres. */
  readonly h: number;
  /** Its marks, its top at `y`. */
  readonly lay: (y: number) => readonly Mark[];
}

/** Blocks that belong together, with a head that is said again where they go on on another page. */
export interface Section {
  readonly head: Block | null;
  readonly blocks: readonly Block[];
}

/** Lays sections one under the other on as many pages as it takes; a head never stands alone at a page's end. */
export function flowPages(
  sections: readonly Section[],
  { top, bottom }: { readonly top: number; readonly bottom: number },
): readonly (readonly Mark[])[] {
  const pages: Mark[][] = [[]];
  let y = top;
  const put = (block: Block) => {
    pages.at(-1)?.push(...block.lay(y));
    y += block.h;
  };
  for (const { block, head, isFirst } of sections.flatMap(listPlaced)) {
    const h = block.h + (isFirst ? getHeight(head) : 0);
    const isOver = y > top && y + h > bottom;
    if (isOver) {
      pages.push([]);
      y = top;
    }
    if (head && (isFirst || isOver)) put(head);
    put(block);
  }
  return pages;
}

function listPlaced({ head, blocks }: Section) {
  return blocks.map((block, at) => ({ block, head, isFirst: at === 0 }));
}

function getHeight(head: Block | null): number {
  return head?.h ?? 0;
}
