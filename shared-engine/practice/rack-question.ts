// A dealt rack and one question about it, without an exchange around it: which three to pass, or which two sections.
import { type Review, recordWithAnswer, reviewRound } from '../analysis/index.ts';
import { type Constraint, sampleRack } from '../drill/index.ts';
import { type Kernel, toGoBySection } from '../kernels/index.ts';
import {
  type Bag,
  bagOf,
  dealTiles,
  dealtSize,
  type Face,
  facesOf,
  type Seat,
  type SeatRecord,
  STANDARD_TERMS,
  stream,
} from '../rules/index.ts';
import { textHash } from './stored-round.ts';

/** Where whoever is asked sits. */
const SEAT = 0;
/** East in one of four racks, as at a table. */
const DEALERS: readonly Seat[] = [0, 1, 2, 3];

export interface AskedRack {
  readonly dealer: Seat;
  readonly isEast: boolean;
  readonly rack: readonly Face[];
}

export type AskedRackResult =
  | { readonly ok: true; readonly asked: AskedRack }
  /** What was wished for is too rare; `message` says what to change. */
  | { readonly ok: false; readonly message: string };

/** Rack `nth` of this seed: by chance where `wish` is null, otherwise one that fits the wish. */
export function askedRack(
  seed: string,
  nth: number,
  wish: Constraint | null,
  kernel: Kernel,
): AskedRackResult {
  const own = textHash(`${seed} rack ${nth}`);
  const dealer = DEALERS[stream(own, 'dealer').below(4)]!;
  const asked = (rack: Bag): AskedRackResult => ({
    ok: true,
    asked: { dealer, isEast: dealer === SEAT, rack: facesOf(rack) },
  });
  if (wish === null) return asked(dealTiles({ seed: own, dealer }).racks[SEAT]);
  const sampled = sampleRack({ constraint: wish, size: dealtSize(SEAT, dealer), kernel }, own);
  return sampled.ok ? asked(sampled.rack) : { ok: false, message: sampled.message };
}

/** The first answer on passing these tiles to the right: its one choice is the pass. */
export function reviewAskedPass({ dealer, rack }: AskedRack, tiles: readonly Face[], kernel: Kernel): Review {
  const record: SeatRecord = { seat: SEAT, dealer, terms: STANDARD_TERMS.alone, start: rack, steps: [] };
  const answer = { kind: 'pass', step: 'first-right', tiles, blind: 0 } as const;
  return reviewRound(recordWithAnswer(record, answer, 'player'), kernel);
}

export interface SectionDistance {
  readonly id: string;
  readonly name: string;
  /** Of the nearest hand of the section. */
  readonly toGo: number;
  /** Within one tile of the nearest section of all. */
  readonly inReach: boolean;
}

/** Nearest first, in card order among equals. */
export function sectionDistances(rack: readonly Face[], kernel: Kernel): readonly SectionDistance[] {
  const distances = toGoBySection(kernel, bagOf(rack));
  const least = Math.min(...distances);
  return kernel.card.sections
    .map(({ id, name }, place) => {
      const toGo = distances[place]!;
      return { id, name, toGo, inReach: toGo <= least + 1 };
    })
    .sort((a, b) => a.toGo - b.toGo);
}
