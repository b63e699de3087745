// What is told of a published drill: to its teacher as a report, and to players who have chosen.
import {
  type AnalyzedChoice,
  anonymousReport,
  type DrillReport,
  type FrozenSpread,
  openSpreads,
  type ReleasedDeal,
  spreadFromShort,
  spreadOfFrozen,
} from '../../shared-engine/index.ts';
import type { PlayingCard } from '../ports.ts';
import { analysisKey, countedDeal, type PublishedState, phaseOf } from './state.ts';

interface ReportedDrill {
  readonly card: PlayingCard;
  readonly state: PublishedState;
  readonly analyses: { readonly areMade: boolean };
}

/** As it was released last; with names, every choice so far. */
export function frozenAt(state: PublishedState, place: number): FrozenSpread[] {
  const deal = state.byDeal[place];
  if (deal === undefined) return [];
  const counted = countedDeal(state, place);
  if (state.terms.names) return openSpreads(deal, counted);
  return deal.spreads.map((short) => spreadFromShort(short, counted));
}

/** How many are through; null before that is told. */
export function throughAt({ byDeal }: Pick<PublishedState, 'byDeal'>, place: number): number | null {
  return byDeal[place]?.through || null;
}

export function drillReport({ card, state, analyses }: ReportedDrill, now: number): DrillReport {
  const deals = state.drill.deals.map((deal, place) =>
    anonymousReport(
      deal,
      {
        players: throughAt(state, place) ?? 0,
        frozen: frozenAt(state, place),
        analyses: analyses.areMade ? analysesOf(state, place) : null,
      },
      card.file,
    ),
  );
  const ended = phaseOf(state, now) !== 'open';
  return { title: state.drill.title, ended, anonymous: !state.terms.names, deals, players: null };
}

/** What a player may compare with; costs are the teacher's report. */
export function releasedDeal(state: PublishedState, place: number): ReleasedDeal {
  const steps = frozenAt(state, place).map((one) => spreadOfFrozen(one, null));
  return { deal: state.drill.deals[place]?.id ?? '', through: throughAt(state, place), steps };
}

function analysesOf({ analyzed }: PublishedState, place: number): Readonly<Record<string, AnalyzedChoice>> {
  const prefix = analysisKey(place, '');
  return Object.fromEntries(
    Object.entries(analyzed).flatMap(([key, choice]) =>
      key.startsWith(prefix) ? [[key.slice(prefix.length), choice]] : [],
    ),
  );
}
