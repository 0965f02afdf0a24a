import type { EvidenceView } from '../../../src-core/contract/evidence-view.ts';
import type { ClipView } from '../../../src-core/contract/lesson-view.ts';
import { buildCountSheet, type CountSheet } from './count-sheet.ts';
import { drawEvidence, type EvidenceDrawing } from './evidence-drawing.ts';

/** A clip's count sheet, and what is drawn beside its stills. */
export interface DrawnClip {
  readonly sheet: CountSheet;
  readonly drawing: EvidenceDrawing;
}

/** What was drawn, by what it was drawn from; gone with it. */
const drawn = new WeakMap<EvidenceView, DrawnClip & { readonly of: string }>();

/**
 * The count sheet and the drawing of a clip: the very same as long as its evidence and what they show of the clip are.
 * Asked for when the next clip's evidence comes, so that its key need not wait for it.
 */
export function drawClip(clip: ClipView, evidence: EvidenceView | null): DrawnClip {
  if (!evidence) return draw(clip, null);
  const of = `${clip.durationSeconds} ${clip.seen.watched}`;
  const known = drawn.get(evidence);
  if (known?.of === of) return known;
  const made = { ...draw(clip, evidence), of };
  drawn.set(evidence, made);
  return made;
}

function draw(clip: ClipView, evidence: EvidenceView | null): DrawnClip {
  const sheet = buildCountSheet(clip, evidence);
  return { sheet, drawing: drawEvidence(evidence, sheet) };
}
