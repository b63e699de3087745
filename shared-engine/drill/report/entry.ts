// What the class report knows about one player: choices, review and aims, and nothing that says who the player is.
import {
  type ChoiceReview,
  isCostly,
  type MeasuredValue,
  type ReplayedDecision,
  type Review,
  replayDecisions,
} from '../../analysis/index.ts';
import {
  type Face,
  facesOf,
  mayPassBlind,
  type SeatRecord,
  type Step,
  sortFaces,
} from '../../rules/index.ts';

/** The sections of the card that a player named as aims before a step. */
export interface Aim {
  readonly step: Step;
  readonly sections: readonly string[];
}

export interface ClassEntry {
  readonly record: SeatRecord;
  /** Null until it is ready: the spread of the choices does not wait for it. */
  readonly review: Review | null;
  readonly aims: readonly Aim[];
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
  /** What it cost by the review; null until there is one. */
  readonly cost: ChoiceCost | null;
}

export interface ChoiceCost {
  /** In tiles to go, from the quick review. */
  readonly loss: number;
  /** In wins of 100 games, from the deep analysis; null until there is one. */
  readonly winsLost: MeasuredValue | null;
  /** Whether another choice was clearly better. */
  readonly costly: boolean;
}

/** The choices of one player in the order of the round. */
export function choicesBy({ record, review }: ClassEntry): readonly ClassChoice[] {
  return replayDecisions(record).flatMap((decision) =>
    choicesIn(decision).map((choice) => ({ ...choice, cost: costIn(review, choice) })),
  );
}

type ChoiceMade = Omit<ClassChoice, 'cost'>;

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

function costIn(review: Review | null, { kind, step }: ChoiceMade): ChoiceCost | null {
  const choice = review?.choices.find((other) => other.kind === kind && other.step === step);
  if (!review || !choice) return null;
  const { analysis, loss } = choice;
  const winsLost = analysis.depth === 'deep' ? analysis.loss : null;
  return { loss, winsLost, costly: isCostly(choice) };
}
