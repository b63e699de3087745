// A deal as a link: everything that decides it stands after the #, so no server ever sees it.
import { type Deal, SEATS, type Seat } from '../../../shared-engine/index.ts';

export interface SharedDeal {
  readonly deal: Deal;
  /** The seat the player of this link takes. */
  readonly seat: Seat;
  /** Code of the table whose card is played, or null for the house card. */
  readonly cardOf: string | null;
}

/** `#deal=SEED.DEALER.SEAT`, with `.CODE` after it for another card than the house card. */
export function dealHash({ deal, seat, cardOf }: SharedDeal): string {
  const parts = [deal.seed, String(deal.dealer), String(seat)];
  return `#deal=${[...parts, ...(cardOf ? [encodeURIComponent(cardOf)] : [])].join('.')}`;
}

/** Null for anything that is not a complete deal. */
export function readDealHash(hash: string): SharedDeal | null {
  const match = /^#deal=([0-9a-f]{64})\.([0-3])\.([0-3])(?:\.([\w-]+))?$/.exec(hash);
  if (!match) return null;
  const [, seed, dealer, seat, cardOf] = match;
  return {
    deal: { seed: seed!, dealer: SEATS[Number(dealer)]! },
    seat: SEATS[Number(seat)]!,
    cardOf: cardOf ?? null,
  };
}

/** The same deal for the same seat, whoever plays it. */
export function dealKey({ deal, seat }: Pick<SharedDeal, 'deal' | 'seat'>): string {
  return `${deal.seed}.${deal.dealer}.${seat}`;
}
