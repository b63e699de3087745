// The vector module answers what its plain twins answer: racks on three cards, removals, whole playouts.
import {
  type Bag,
  bagOf,
  type CompiledCard,
  createBatchKernel,
  createBatchPlayouts,
  createRemovals,
  drawn,
  FULL_SET,
  facesOf,
  houseCard,
  loadVectors,
  NO_VECTORS,
  STEPS,
  stream,
  tilesToGo,
  type Vectors,
} from '../../../shared-engine/index.ts';
import { flatRacks } from '../../kit/flat-racks.ts';
import { oddCard } from '../../kit/random-card.ts';
import { anyBatch } from '../../kit/playout-batches.ts';
import type { Proof, ProofRow } from '../proof.ts';

const CARDS = [houseCard(), oddCard('wide', 120, 60), oddCard('few', 3, 5)];

export const proof: Proof = {
  summary:
    'The vector module equals its plain twins: every distance, every removal, every bit of an outlook.',
  async run({ seed, size }) {
    const vectors = await loadVectors();
    if (vectors.kind === 'missing') throw new Error(vectors.why);
    const [racks, worlds] = size === 'full' ? [100_000, 400] : [1000, 8];
    return CARDS.flatMap((card) => [
      ...rackRows(vectors, card, dealtRacks(`${seed}/${card.id}`, racks)),
      playoutRow(vectors, card, seed, worlds),
    ]);
  },
};

function dealtRacks(seed: string, count: number): Bag[] {
  const random = stream(seed, 'prove/kernel');
  const tiles = facesOf(FULL_SET);
  return Array.from({ length: count }, (_, nth) => bagOf(drawn(tiles, 13 + (nth % 2), random)));
}

function rackRows(vectors: Vectors, card: CompiledCard, racks: readonly Bag[]): ProofRow[] {
  const fast = createBatchKernel(vectors, card);
  const flat = flatRacks(racks);
  const many = fast.toGoMany(flat);
  let differing = 0;
  for (const [nth, rack] of racks.entries()) {
    const { byLine, histogram } = definition(card, rack);
    const least = Math.min(14, ...byLine);
    const same =
      many[nth] === least &&
      fast.toGo(rack) === least &&
      `${fast.toGoByLine(rack)}` === `${byLine}` &&
      `${fast.histogram(rack)}` === `${histogram}`;
    if (!same) differing++;
  }
  const removed = createRemovals(vectors, card)(flat);
  const twin = createRemovals(NO_VECTORS, card)(flat);
  const otherwise = racks.filter(
    (_, nth) =>
      removed.spare[nth] !== twin.spare[nth] ||
      [0, 1, 2].some((i) => removed.gone[nth * 3 + i] !== twin.gone[nth * 3 + i]),
  ).length;
  const on = `${racks.length} racks on ${card.id} (${card.targets.length} targets)`;
  return [
    row(`${on}: distances that differ from the definition`, differing),
    row(`${on}: removals that differ from plain words`, otherwise),
  ];
}

/** Everything a kernel says, one target at a time. */
function definition({ lines, targets }: CompiledCard, rack: Bag): { byLine: number[]; histogram: number[] } {
  const byLine = lines.map(() => 14);
  const histogram = new Array<number>(15).fill(0);
  for (const target of targets) {
    const distance = tilesToGo(target, rack);
    byLine[target.line] = Math.min(byLine[target.line]!, distance);
    histogram[distance]!++;
  }
  return { byLine, histogram };
}

function playoutRow(vectors: Vectors, card: CompiledCard, seed: string, worlds: number): ProofRow {
  const fast = createBatchPlayouts(vectors, card);
  const plain = createBatchPlayouts(NO_VECTORS, card);
  const random = stream(`${seed}/${card.id}`, 'prove/playouts');
  let all = 0;
  let differing = 0;
  for (const step of STEPS) {
    const batch = anyBatch({ step, seat: 1, dealer: 2, worlds, alternatives: 5 }, random);
    const twin = plain.run(batch);
    for (const [nth, value] of fast.run(batch).entries()) {
      all++;
      if (!Object.is(value, twin[nth])) differing++;
    }
  }
  return row(`${all} outlooks of playouts on ${card.id}: not the same bit by bit`, differing);
}

function row(what: string, value: number): ProofRow {
  return { what, value, bar: '0', ok: value === 0 };
}
