// The state of a published drill, as its log determines it.
import {
  type AnalyzedChoice,
  type CountedChoices,
  type CountedDeal,
  type DealCounts,
  type Drill,
  drillTerms,
  type PreparedDeal,
  type PublishedTerms,
  type ShortSpread,
  type Terms,
} from '../../shared-engine/index.ts';
import type { TeacherKey } from '../class/state.ts';
import type { CardChoice } from '../ports.ts';
import type { Question } from './event.ts';

/** The id of the round that counts for a device, by the place of the deal. */
export type CountedRounds = Readonly<Record<string, string>>;

/** Devices by their first two digits, so that one more copies some of them and not all. */
export type Players = Readonly<Record<string, Readonly<Record<string, CountedRounds>>>>;

/** What is known of one deal: what is told, and what waits for the next release. */
export interface DealState extends DealCounts {
  /** Players through the deal of whom something is told. */
  readonly through: number;
  readonly waiting: readonly CountedChoices[];
  readonly waitingQuestions: readonly Question[];
  /** As released last. */
  readonly spreads: readonly ShortSpread[];
  readonly questions: readonly Question[];
  /** Of those who are through, by device; empty unless players give a name. */
  readonly names: Readonly<Record<string, string>>;
}

export interface PublishedState {
  /** Number of the last event. */
  readonly seq: number;
  readonly drill: Drill;
  readonly deals: readonly PreparedDeal[];
  readonly terms: PublishedTerms;
  readonly card: CardChoice;
  readonly secretHash: string;
  readonly until: number;
  readonly isWithdrawn: boolean;
  readonly keys: readonly TeacherKey[];
  /** Rounds counted, over all deals. */
  readonly rounds: number;
  /** Questions stored, told or not. */
  readonly asked: number;
  /** Ids of the rounds whose questions were not stored. */
  readonly unasked: readonly string[];
  readonly players: Players;
  readonly byDeal: readonly DealState[];
  readonly analyzed: Readonly<Record<string, AnalyzedChoice>>;
}

export type Phase = 'open' | 'over' | 'withdrawn';

/** `at` is the time, in milliseconds since 1970. */
export function phaseOf(
  { isWithdrawn, until }: Pick<PublishedState, 'isWithdrawn' | 'until'>,
  at: number,
): Phase {
  if (isWithdrawn) return 'withdrawn';
  return at > until ? 'over' : 'open';
}

/** Names a device in the log: half of the hash of its secret, which nobody finds by trying. */
export function playerOf(secretHash: string): string {
  return secretHash.slice(0, 32);
}

export function roundsOf({ players }: Pick<PublishedState, 'players'>, player: string): CountedRounds {
  return players[bucketOf(player)]?.[player] ?? {};
}

export function bucketOf(player: string): string {
  return player.slice(0, 2);
}

/** So that no order of arrival shows. */
export function inOrder(questions: readonly Question[]): Question[] {
  return questions.toSorted((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
}

/** How every device plays. */
export function publishedTableTerms({ drill, terms }: Pick<PublishedState, 'drill' | 'terms'>): Terms {
  return { ...drillTerms(drill), deadline: null, ...(terms.cardClosed && { cardHelp: 'none' }) };
}

/** Every deal is turned so that the player sits on seat 0. */
export function countedDeal(state: PublishedState, place: number): CountedDeal {
  return { seat: 0, terms: publishedTableTerms(state), rack: state.deals[place]?.prepared[0] ?? [] };
}

/** Names the analysis of a pass from the dealt rack. */
export function analysisKey(place: number, decisionId: string): string {
  return `${place} ${decisionId}`;
}
