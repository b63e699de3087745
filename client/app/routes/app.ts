// What every screen may ask of the page around it: where it is, the settings, the sheet on top.
import type { ReadonlySignal } from '@preact/signals';
import type { Review } from '../../../shared-engine/index.ts';
import type { Settings } from '../../storage/settings.ts';
import type { SharedDeal } from './deal-link.ts';
import type { Route } from './route.ts';

/** What may open over any screen without leaving it. */
export type Sheet = 'settings' | 'help';

export interface ReviewedPlay {
  /** The same object for the same play. */
  readonly room: object;
  readonly isPast: boolean;
  readonly review: Review;
}

export interface App {
  readonly route: ReadonlySignal<Route>;
  /** The screen before the front page; null on any other screen, and where the page began. */
  readonly left: ReadonlySignal<Route | null>;
  readonly settings: ReadonlySignal<Settings>;
  readonly sheet: ReadonlySignal<Sheet | null>;
  go(route: Route): void;
  /** Gives the screen that is shown the address of this route, without a step in the browser's history. */
  rename(route: Route): void;
  change(part: Partial<Settings>): void;
  show(sheet: Sheet | null): void;
  /**
   * For what has been opened over the screen: the next step back closes it instead of leaving the screen. What this
   * returns is called when it is closed in another way.
   */
  layOver(onBack: () => void): () => void;
  /** A fresh deal for a table in the page. */
  freshDeal(): SharedDeal;
  /** Paths of the tables where this browser sat last, the latest first. */
  recentPlaces(): readonly string[];
  /** The address a friend can open. */
  linkTo(route: Route): string;
  /**
   * Stores the review of the first play of a deal on this page, deeper ones in its place, and returns it for a later
   * play. A round of the past is no later play: what is stored of its deal may be that same one.
   */
  reviewBefore(deal: string, play: ReviewedPlay): Review | null;
}
