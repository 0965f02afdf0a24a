import type { PackPage } from '../../../printing/pack.ts';
import type { Layout } from '../marks.ts';
import type { PackPhotos } from '../pack-photos.ts';
import { layOutAnswerKey } from './answer-key-page.ts';
import { layOutBriefing } from './briefing-pages.ts';
import { layOutCluePage } from './clue-card-page.ts';
import { layOutRouteKey } from './route-key-page.ts';
import { layOutRouteList } from './route-list-page.ts';
import { layOutLabels, layOutSquadSheet } from './squad-sheet-page.ts';
import { layOutStationCard } from './station-card-page.ts';

/** A page of the pack as marks; a briefing may take several. */
export function layOutPage(page: PackPage, photos: PackPhotos): readonly Layout[] {
  switch (page.kind) {
    case 'briefing':
      return layOutBriefing(page);
    case 'route-key':
      return [layOutRouteKey(page)];
    case 'answer-key':
      return [layOutAnswerKey(page, photos)];
    case 'station-card':
      return [layOutStationCard(page)];
    case 'clue-cards':
      return [layOutCluePage(page)];
    case 'squad-sheet':
      return [layOutSquadSheet(page)];
    case 'route-list':
      return [layOutRouteList(page)];
    case 'tablet-labels':
      return [layOutLabels(page)];
  }
}
