// The state of a class, as its log tells it.
import type {
  ClassTerms,
  Drill,
  PreparedDeal,
  Seat,
  Settled,
  Step,
  WallChoice,
} from '../../shared-engine/index.ts';
import type { CardChoice } from '../room/card-choice.ts';

export interface Pupil {
  /** 0 for the first who joined. */
  readonly id: number;
  readonly name: string;
  readonly key: string;
  readonly room: string;
  readonly seat: Seat;
  readonly standIn: boolean;
  /** Whether the pupil gave the seat up; a bot plays there, and the name is forgotten. */
  readonly left: boolean;
  /** Place in the drill of the first deal that this pupil's table gets. */
  readonly first: number;
}

/** The families a pupil named before a step of a deal. */
export interface NamedAim {
  readonly pupil: number;
  /** Place of the deal in the drill. */
  readonly deal: number;
  readonly step: Step;
  readonly families: readonly string[];
}

export interface ClassState {
  /** Number of the last event. */
  readonly seq: number;
  readonly drill: Drill;
  readonly deals: readonly PreparedDeal[];
  readonly terms: ClassTerms;
  readonly card: CardChoice;
  readonly key: string;
  readonly pupils: readonly Pupil[];
  /** How many deals of the drill have been dealt. */
  readonly dealt: number;
  /** Where the class plays one line: how the deal on the desk has gone so far, and whether it is closed. */
  readonly line: readonly Settled[];
  readonly lineClosed: boolean;
  /** The lines of the deals before it, by their place in the drill; each of them is closed. */
  readonly linesBefore: readonly (readonly Settled[])[];
  readonly holdBefore: Step | null;
  readonly shown: WallChoice | null;
  readonly aims: readonly NamedAim[];
  readonly ended: boolean;
}

/** Whether the class goes on from one choice for all after each step (rule L1). */
export function playsOneLine({ drill }: ClassState): boolean {
  return drill.form === 'one-line';
}

/** Those who are still in the class. */
export function pupilsIn({ pupils }: ClassState): readonly Pupil[] {
  return pupils.filter(({ left }) => !left);
}

/** Seats at each table that pupils take. */
export function pupilsAtTable({ drill }: ClassState): number {
  return drill.form === 'tables' ? 4 : 1;
}
