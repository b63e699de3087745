import { type Choice, type Command, type Random, type Round, type RoundEvent, type RoundRefusal, type Seat } from '../../shared-engine/index.ts';
/** A 64-digit seed made from a short name, so that a failing test can be named and found again. */
export declare function seedNamed(name: string): string;
export interface Played {
    readonly round: Round;
    readonly log: readonly RoundEvent[];
}
export declare function opened(name: string, dealer?: Seat, layOpen?: boolean): Played;
/** The round after a command that must be legal. */
export declare function act(played: Played, command: Command): Played;
/** The refusal of a command that must be illegal. */
export declare function refusalOf(round: Round, command: Command): RoundRefusal;
/** A step's answer drawn evenly: any legal tiles, any blind number, any vote, any number asked. */
export declare function anyChoice(round: Round, seat: Seat, random: Random): Choice;
/** Seats that still owe an answer. */
export declare function owing(round: Round): Seat[];
/** Plays on by `choose` until `until` holds or the round is closed; seats answer in a random order. */
export declare function playOn(played: Played, random: Random, until?: (round: Round) => boolean, choose?: (round: Round, seat: Seat, random: Random) => Choice): Played;
