// A deal as a link: everything that decides it stands after the #, so no server ever sees it.
import {
  COURTESY_WAYS,
  type Deal,
  type ExchangeTerms,
  SEATS,
  SECOND_CHARLESTON_WAYS,
  type Seat,
  STANDARD_TERMS,
  type Terms,
} from '../../../shared-engine/index.ts';

export interface SharedDeal {
  readonly deal: Deal;
  /** The seat the player of this link takes. */
  readonly seat: Seat;
  /** Code of the table whose card is played, or `ownCardOf` a card on this device; null for the house card. */
  readonly cardOf: string | null;
  /** What is passed and asked, so that whoever plays the deal plays the same. */
  readonly ways: ExchangeTerms;
}

const OWN = 'own-';

/** Names a card on this device in a deal; on another device the house card is played. */
export function ownCardOf(key: string | null): string | null {
  return key === null ? null : `${OWN}${key}`;
}

/** The key of a card on this device; null for the code of a table. */
export function ownKeyIn(cardOf: string): string | null {
  return cardOf.startsWith(OWN) ? cardOf.slice(OWN.length) : null;
}

/** `#deal=SEED.DEALER.SEAT`, with `.CODE` after it for another card than the house card, then the ways that are not usual. */
export function dealHash({ deal, seat, cardOf, ways }: SharedDeal): string {
  const parts = [deal.seed, String(deal.dealer), String(seat)];
  const place = [...parts, ...(cardOf ? [encodeURIComponent(cardOf)] : [])].join('.');
  const usual = STANDARD_TERMS.alone;
  const unusual = [
    ways.secondCharleston === usual.secondCharleston ? '' : `&second=${ways.secondCharleston}`,
    ways.blindPasses ? '' : '&blind=no',
    ways.courtesy === usual.courtesy ? '' : `&courtesy=${ways.courtesy}`,
  ];
  return `#deal=${place}${unusual.join('')}`;
}

/** Null for anything that is not a complete deal. */
export function readDealHash(hash: string): SharedDeal | null {
  const match = /^#deal=([0-9a-f]{64})\.([0-3])\.([0-3])(?:\.([\w-]+))?((?:&\w+=[\w-]+)*)$/.exec(hash);
  if (!match) return null;
  const [, seed, dealer, seat, cardOf, named = ''] = match;
  const ways = waysFrom(new URLSearchParams(named));
  return (
    ways && {
      deal: { seed: seed!, dealer: SEATS[Number(dealer)]! },
      seat: SEATS[Number(seat)]!,
      cardOf: cardOf ?? null,
      ways,
    }
  );
}

/** As usual where nothing is named; null for a way that there is not. */
function waysFrom(named: URLSearchParams): ExchangeTerms | null {
  const usual = STANDARD_TERMS.alone;
  const blind = named.get('blind') ?? 'yes';
  if (blind !== 'yes' && blind !== 'no') return null;
  const second = named.get('second') ?? usual.secondCharleston;
  const asked = named.get('courtesy') ?? usual.courtesy;
  const secondCharleston = SECOND_CHARLESTON_WAYS.find((way) => way === second);
  const courtesy = COURTESY_WAYS.find((way) => way === asked);
  if (secondCharleston === undefined || courtesy === undefined) return null;
  return { secondCharleston, blindPasses: blind === 'yes', courtesy };
}

/** The same deal for the same seat, whoever plays it. */
export function dealKey({ deal, seat }: Pick<SharedDeal, 'deal' | 'seat'>): string {
  return `${deal.seed}.${deal.dealer}.${seat}`;
}

/** The part of a table's terms that a link carries. */
export function exchangeOf({ secondCharleston, blindPasses, courtesy }: Terms): ExchangeTerms {
  return { secondCharleston, blindPasses, courtesy };
}
