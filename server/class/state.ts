// The state of a class, as its log determines it.
import {
  type AnalyzedChoice,
  type ClassTerms,
  type Drill,
  drillTerms,
  type FrozenSpread,
  type PreparedDeal,
  type Resolved,
  type Seat,
  type ShownStep,
  type Step,
  type Terms,
  type TilesToGo,
} from '../../shared-engine/index.ts';
import type { Allowance, Used } from '../aggregate/allowance.ts';
import type { CardChoice } from '../ports.ts';

export interface ClassPlayer {
  /** 0 for the first who joined. */
  readonly id: number;
  readonly name: string;
  readonly secretHash: string;
  readonly room: string;
  readonly seat: Seat;
  readonly standIn: boolean;
  /** Whether the player gave the seat up: a bot plays there, and the name is deleted. */
  readonly left: boolean;
  /** Whether the teacher removed the player, who then counts as having left and cannot come back. */
  readonly removed: boolean;
  /** Whether somebody else has taken the place of this player, who had left before anything was dealt there. */
  readonly replaced: boolean;
  /** The name with which the player took this place: another one may have been given since. */
  readonly seatedAs: string;
  /** Place in the drill of the first deal that this player's table gets. */
  readonly first: number;
  /** Of how often this player may name aims. */
  readonly aimsUsed: Used;
}

/** How often a player names aims: each section that is touched names them anew. */
export const AIMS: Allowance = { atOnce: 30, everyMs: 10_000 };

/** The sections a player named before a step of a deal. */
export interface NamedAim {
  readonly player: number;
  /** Place of the deal in the drill. */
  readonly deal: number;
  readonly step: Step;
  readonly sections: readonly string[];
}

/** A step of an anonymous class of which everything is told that ever will be (rule AN3). */
export interface FrozenStep {
  /** Place of the deal in the drill. */
  readonly deal: number;
  readonly seat: Seat;
  readonly step: Step;
  /** One for each kind of choice of which something is told; none where nothing is. */
  readonly spreads: readonly FrozenSpread[];
}

/** A secret besides that of whoever opened the class, which opens the same dashboard (rule TK1). */
export interface TeacherKey {
  /** 0 for the first one made. */
  readonly id: number;
  readonly secretHash: string;
  /** When it was made, in milliseconds since 1970. */
  readonly at: number;
  readonly isRevoked: boolean;
}

/** The code that opens the big screen, and the screens opened with it (rule TK4). */
export interface ScreenAccess {
  /** Null before the first code. */
  readonly codeHash: string | null;
  /** Hashes of the secrets of the screens, oldest first. */
  readonly opened: readonly string[];
  /** Of how often one may be opened. */
  readonly used: Used;
}

/** How often the code opens a screen, each of which stays in the log. */
export const SCREENS: Allowance = { atOnce: 40, everyMs: 60_000 };

/** How a player's round went as a whole. */
export interface ClosedRound {
  readonly player: number;
  /** Place of the deal in the drill. */
  readonly deal: number;
  readonly toGo: TilesToGo;
}

export interface ClassState {
  /** Number of the last event. */
  readonly seq: number;
  readonly drill: Drill;
  readonly deals: readonly PreparedDeal[];
  readonly terms: ClassTerms;
  readonly card: CardChoice;
  readonly secretHash: string;
  readonly keys: readonly TeacherKey[];
  readonly screen: ScreenAccess;
  readonly players: readonly ClassPlayer[];
  /** The codes of all tables, in the order in which they were opened. */
  readonly tables: readonly string[];
  /** How many deals of the drill have been dealt. */
  readonly dealt: number;
  /** In a guided class, the outcomes of the current deal so far, and whether it is closed. */
  readonly outcomes: readonly Resolved[];
  readonly dealClosed: boolean;
  /** The outcomes of the deals before it, by their place in the drill; each of them is closed. */
  readonly outcomesBefore: readonly (readonly Resolved[])[];
  readonly holdBefore: Step | null;
  readonly shown: ShownStep | null;
  readonly aims: readonly NamedAim[];
  /** Whether somebody new may join. */
  readonly joiningOpen: boolean;
  /** Whether players may play the deals again at home. */
  readonly takeHome: boolean;
  /** Whether they ever might: what their devices were sent then stays there. */
  readonly wasTakenHome: boolean;
  /** For each deal that was dealt, the ids of the players who were in the class then (rule AN2). */
  readonly cohorts: readonly (readonly number[])[];
  readonly frozen: readonly FrozenStep[];
  /** What deep analyses say, by the id of the decision: stored, so that it is the same at every server and after a restart. */
  readonly analyzed: Readonly<Record<string, AnalyzedChoice>>;
  readonly rounds: readonly ClosedRound[];
  readonly ended: boolean;
}

/** How the tables of the class play: as the drill says, by the class's clock, with the card closed where it is. */
export function classTableTerms({ drill, terms }: Pick<ClassState, 'drill' | 'terms'>): Terms {
  const { deadline, cardClosed } = terms;
  return { ...drillTerms(drill), deadline, ...(cardClosed && { cardHelp: 'none' }) };
}

/** Whether all tables continue from one choice after each step (rule L1). */
export function isGuided({ drill }: ClassState): boolean {
  return drill.form === 'guided';
}

/** Hashes of every secret that makes its bearer a teacher of this class. */
export function teacherHashes({ secretHash, keys }: Pick<ClassState, 'secretHash' | 'keys'>): string[] {
  return [secretHash, ...keys.filter(({ isRevoked }) => !isRevoked).map((key) => key.secretHash)];
}

/** Whether something was meant for another deal than the one that the class has come to (rule TK6). */
export function isMeantForAnother({ dealt }: ClassState, seen: { readonly dealt?: number }): boolean {
  return seen.dealt !== undefined && seen.dealt !== dealt;
}

/** Those who are still in the class. */
export function playersIn({ players }: ClassState): readonly ClassPlayer[] {
  return players.filter(({ left }) => !left);
}

/** Those whose tables are theirs: everybody but who left and was replaced before the first deal. */
export function playersWithPlace({ players }: ClassState): readonly ClassPlayer[] {
  return players.filter(({ replaced }) => !replaced);
}

/** Seats at each table that players take. */
export function playersAtTable({ drill }: ClassState): number {
  return drill.form === 'tables' ? 4 : 1;
}

/** At tables of four the tiles of the other seats were dealt to people, and stay theirs (rule TH2). */
export function mayBeTakenHome({ form }: Drill): boolean {
  return form !== 'tables';
}

/** The step as it was frozen; undefined before that. */
export function frozenAt(
  { frozen }: ClassState,
  { deal, seat, step }: Pick<FrozenStep, 'deal' | 'seat' | 'step'>,
): FrozenStep | undefined {
  return frozen.find((one) => one.deal === deal && one.seat === seat && one.step === step);
}

/** The outcomes of this deal from which a guided class has continued. */
export function outcomesOf(
  { dealt, outcomes, outcomesBefore }: ClassState,
  deal: number,
): readonly Resolved[] {
  return deal === dealt - 1 ? outcomes : (outcomesBefore[deal] ?? []);
}
