// What the class report knows about one player: choices, review and aims, and nothing that says who the player is.
import { type ChoiceReview, type ReplayedDecision, replayDecisions } from '../../analysis/index.ts';
import {
  type Face,
  facesOf,
  mayPassBlind,
  type SeatRecord,
  type Step,
  sortFaces,
} from '../../rules/index.ts';
import type { AnalyzedChoice } from './analyzed-choice.ts';

/** The sections of the card that a player named as aims before a step. */
export interface Aim {
  readonly step: Step;
  readonly sections: readonly string[];
}

export interface ClassEntry {
  readonly record: SeatRecord;
  /**
   * Of the choices analyzed so far, in any order: the spread of the choices does not wait for them. Null where no deep
   * analyses are made.
   */
  readonly analyses: readonly AnalyzedChoice[] | null;
  /** Tiles to go as dealt and at the close; null until then. */
  readonly toGo: TilesToGo | null;
  readonly aims: readonly Aim[];
}

export interface TilesToGo {
  readonly start: number;
  readonly end: number;
}

export type ChoiceKind = ChoiceReview['kind'];

/** One choice that a player made, or that a bot made for the player. */
export interface ClassChoice {
  readonly kind: ChoiceKind;
  readonly step: Step;
  /** Whether the player made it. */
  readonly own: boolean;
  readonly rack: readonly Face[];
  /** Tiles passed in rack order, or a number: passed blind, asked for, or 1 to continue and 0 to stop. */
  readonly chosen: readonly Face[] | number;
  /** What the deep analysis says; null until there is one. */
  readonly analyzed: AnalyzedChoice | null;
  /** Whether it is still to come. */
  readonly isPending: boolean;
}

/** The choices of one player in the order of the round. */
export function choicesBy({ record, analyses }: ClassEntry): readonly ClassChoice[] {
  return replayDecisions(record).flatMap((decision) =>
    choicesIn(decision).map((choice) => {
      const { kind, step, own, chosen } = choice;
      const analyzed = analyses?.find((one) => one.kind === kind && one.step === step) ?? null;
      // Where all tiles went blind there were none to choose.
      const isAnalyzed = typeof chosen === 'number' || chosen.length > 0;
      const isPending = own && isAnalyzed && analyses !== null && analyzed === null;
      return { ...choice, analyzed, isPending };
    }),
  );
}

type ChoiceMade = Omit<ClassChoice, 'analyzed' | 'isPending'>;

/** One choice, or two where tiles could go blind: how many did, and which others. */
function choicesIn(decision: ReplayedDecision): ChoiceMade[] {
  const facts = { own: decision.by === 'player', rack: facesOf(decision.rack) };
  switch (decision.kind) {
    case 'vote':
      return [{ kind: 'vote', step: 'vote', ...facts, chosen: Number(decision.go) }];
    case 'ask':
      return [{ kind: 'ask', step: 'courtesy-ask', ...facts, chosen: decision.asked }];
    case 'move': {
      const { step, gave, blind } = decision;
      const pass: ChoiceMade = { kind: 'pass', step, ...facts, chosen: sortFaces(gave) };
      return mayPassBlind(step, decision.terms)
        ? [{ kind: 'blind', step, ...facts, chosen: blind }, pass]
        : [pass];
    }
  }
}
