// The address of a table in the page, which goes along from deal to deal.
import type { Deal, Terms } from '../../shared-engine/index.ts';
import { lastingStorage } from '../storage/browser-storage.ts';
import { forgetPlace, rememberPlace } from '../storage/recent-places.ts';
import { pathOf, type Route } from './routes/route.ts';

export interface FollowedDeals {
  /** To the deal that is on the table. */
  readonly path: () => string;
  readonly onDeal: (deal: Deal, terms: Terms) => void;
}

/** One table in the page is one place, however many deals are played at it. */
export function followDeals(first: Route, routeTo: (deal: Deal, terms: Terms) => Route): FollowedDeals {
  let place = pathOf(first);
  return {
    path: () => place,
    onDeal(deal, terms) {
      forgetPlace(lastingStorage, place);
      place = pathOf(routeTo(deal, terms));
      rememberPlace(lastingStorage, place);
      // Where the step lies over the screen, it still does.
      window.history.replaceState(window.history.state, '', place);
    },
  };
}
