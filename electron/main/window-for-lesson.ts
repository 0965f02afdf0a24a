import type { LessonId } from '../../src-core/contract/desk-view.ts';

/** What is asked of a window; Electron's has it. */
interface OpenWindow {
  readonly webContents: { readonly getURL: () => string };
}

/**
 * The window to be raised when a lesson is asked for: the one that shows it, else one at the start screen, which goes
 * there by itself. Null: every window is in the midst of something else, so the lesson gets one of its own.
 */
export function findWindowFor<Window extends OpenWindow>(
  lesson: LessonId,
  windows: readonly Window[],
): Window | null {
  const findAt = (places: RegExp) =>
    windows.find(({ webContents }) => places.test(new URL(webContents.getURL() || 'about:blank').hash));
  return findAt(new RegExp(`^#/${lesson}(/|$)`)) ?? findAt(/^(#\/?)?$/) ?? null;
}
