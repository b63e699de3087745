// What the class report knows of a pupil: choices, review and aims, and nothing that says who it was.
import { MOVES, type Step } from '../../exchange/schedule.ts';
import { type Relived, relive } from '../../review/relive.ts';
import type { ChoiceReview, Review } from '../../review/review.ts';
import { facesOf, sortFaces } from '../../tiles/bag.ts';
import type { Face } from '../../tiles/face.ts';
import type { SeatRecord } from '../../view/record.ts';

/** The families a pupil said the tiles pointed to, before a step. */
export interface Aim {
  readonly step: Step;
  readonly families: readonly string[];
}

export interface ClassEntry {
  readonly record: SeatRecord;
  /** Null as long as there is none: the spread of the choices does not wait for it. */
  readonly review: Review | null;
  readonly aims: readonly Aim[];
}

export type ChoiceKind = ChoiceReview['kind'];

/** One choice that a pupil made, or that somebody made for the pupil. */
export interface Made {
  readonly kind: ChoiceKind;
  readonly step: Step;
  readonly own: boolean;
  readonly rack: readonly Face[];
  /** Tiles passed in rack order, or a number: passed unseen, asked for, 1 for going on and 0 for stopping. */
  readonly chosen: readonly Face[] | number;
  readonly loss: number | null;
}

/** The choices of one pupil in the order of the round. */
export function madeBy({ record, review }: ClassEntry): readonly Made[] {
  return relive(record).offered.flatMap((offer) =>
    answersTo(offer).map((answer) => ({ ...answer, loss: lossOf(review, answer) })),
  );
}

type Answer = Omit<Made, 'loss'>;

function answersTo(offer: Relived['offered'][number]): Answer[] {
  const facts = { own: offer.by === 'owner', rack: facesOf(offer.rack) };
  switch (offer.kind) {
    case 'vote':
      return [{ kind: 'vote', step: 'vote', ...facts, chosen: Number(offer.go) }];
    case 'ask':
      return [{ kind: 'ask', step: 'courtesy-ask', ...facts, chosen: offer.asked }];
    case 'move': {
      const { step, gave, blind } = offer;
      const pass: Answer = { kind: 'pass', step, ...facts, chosen: sortFaces(gave) };
      return MOVES[step].blind ? [{ kind: 'blind', step, ...facts, chosen: blind }, pass] : [pass];
    }
  }
}

function lossOf(review: Review | null, { kind, step }: Answer): number | null {
  return review?.choices.find((choice) => choice.kind === kind && choice.step === step)?.loss ?? null;
}
