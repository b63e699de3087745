// The outlook model and what it looks at, laid out in the memory of the vector module.
import type { CompiledCard, Target } from '../../card/compiled.ts';
import type { CardMemory } from '../../kernels/simd/card-memory.ts';
import type { VectorExports } from '../../kernels/simd/host.ts';
import { copiesOf, FACE_COUNT, FACES } from '../../rules/tiles/face.ts';
import { MEASURES, scaleOf } from './features.ts';
import type { OutlookModel } from './model-format.ts';
import { weightsFor } from './reach.ts';

/** Jokers that weights are told apart by. */
const JOKERS = 9;

/** Bytes that hold the wants of one target: their number, whether its line is concealed, pairs of face and number. */
const WANT_BYTES = 32;

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly concealed: boolean;
}

/** Lays the model out in an instance that holds the card. */
export function layOutlook(
  vectors: VectorExports,
  card: CompiledCard,
  { rowBytes }: CardMemory,
  model: OutlookModel,
): void {
  layReach(vectors, card, rowBytes, model);
  const { scores, chances, weights } = model;
  const fitted = [
    model.start,
    ...MEASURES.map((name) => weights[name]),
    ...model.places,
    ...scores,
    ...chances,
  ];
  const wantsAt = vectors.reserve(card.targets.length * WANT_BYTES);
  const copiesAt = vectors.reserve(FACE_COUNT);
  const fittedAt = vectors.reserve(fitted.length * 8);
  const rackAt = vectors.reserve(FACE_COUNT);
  const { buffer } = vectors.memory;
  const wants = new Uint8Array(buffer, wantsAt, card.targets.length * WANT_BYTES);
  for (const [nth, target] of card.targets.entries()) wants.set(wantsOf(card, target), nth * WANT_BYTES);
  new Uint8Array(buffer, copiesAt, FACE_COUNT).set(FACES.map(copiesOf));
  new Float64Array(buffer, fittedAt, fitted.length).set(fitted);
  const rack = new Uint8Array(buffer, rackAt, FACE_COUNT);
  const { centre, spread } = scaleOf((stranger) => {
    rack.set(stranger);
    return vectors.reachOf(rackAt);
  });
  vectors.setOutlook(wantsAt, copiesAt, fittedAt, scores.length, centre, spread);
}

function layReach(
  vectors: VectorExports,
  card: CompiledCard,
  rowBytes: number,
  { steps }: OutlookModel,
): void {
  const tables = Array.from({ length: JOKERS }, (_, jokers) => [
    weightsFor(steps, jokers, false),
    weightsFor(steps, jokers, true),
  ]).flat();
  const stretches = stretchesOf(card);
  const roomAt = vectors.reserve(rowBytes * 2);
  const weightsAt = vectors.reserve(tables.length * 256 * 8);
  const stretchesAt = vectors.reserve(stretches.length * 12);
  const { buffer } = vectors.memory;
  for (const [nth, table] of tables.entries()) {
    new Float64Array(buffer, weightsAt + nth * 256 * 8, 256).set(table);
  }
  const list = stretches.flatMap(({ from, to, concealed }) => [from, to, concealed ? 1 : 0]);
  new Uint32Array(buffer, stretchesAt, list.length).set(list);
  const extra = paddingOf(card, false) * tables[0]![0]! + paddingOf(card, true) * tables[1]![0]!;
  vectors.setReach(roomAt, weightsAt, stretchesAt, stretches.length, extra);
}

/** Neighbouring targets whose lines are all concealed, or all not. */
function stretchesOf({ lines, targets }: CompiledCard): Stretch[] {
  const stretches: Stretch[] = [];
  for (const [nth, { line }] of targets.entries()) {
    const { concealed } = lines[line]!;
    const last = stretches.at(-1);
    if (last?.concealed === concealed) stretches[stretches.length - 1] = { ...last, to: nth + 1 };
    else stretches.push({ from: nth, to: nth + 1, concealed });
  }
  return stretches;
}

/** Lanes without a target where each line begins a word of four, which the plain twin weighs too. */
function paddingOf({ lines, targets }: CompiledCard, concealed: boolean): number {
  const sizes = lines.map(() => 0);
  for (const { line } of targets) sizes[line]!++;
  return lines.reduce(
    (sum, line, nth) => sum + (line.concealed === concealed ? (4 - (sizes[nth]! % 4)) % 4 : 0),
    0,
  );
}

function wantsOf(card: CompiledCard, { line, singles, groups }: Target): number[] {
  const wants = singles.flatMap((single, face) => {
    const wanted = single + groups[face]!;
    return wanted > 0 ? [face, wanted] : [];
  });
  return [wants.length / 2, card.lines[line]!.concealed ? 1 : 0, ...wants];
}
