// A published drill as a device is sent it, without deals.
import type { PublishedDrill } from '../../shared-engine/protocol/published.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';

export function publishedDrill(more: Partial<PublishedDrill> = {}): PublishedDrill {
  return {
    code: 'ABCD2345',
    title: 'Club drill',
    state: 'open',
    until: 1_800_000_000_000,
    terms: { compare: 'at-once', names: false, cardClosed: false },
    tableTerms: STANDARD_TERMS.class,
    bots: ['typical', 'strong', 'casual'],
    deals: [],
    card: null,
    counted: [],
    keptDays: 400,
    teacher: false,
    ...more,
  };
}
