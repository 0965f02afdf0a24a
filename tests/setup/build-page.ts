import { buildPage, canBrowse } from '../app/browser.ts';

/** Builds the page once for all windows. */
export default async function buildPageOnce(): Promise<void> {
  if (canBrowse()) process.env.ROUTEMARK_BUILT_PAGE = await buildPage();
}
