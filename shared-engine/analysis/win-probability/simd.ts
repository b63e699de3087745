// Writes the win-probability model and the features' data into the memory of the SIMD module.
import type { CompiledCard, Hand } from '../../card/index.ts';
import { EXP_MINUS_STEPS, type SimdInstance, type WrittenCard } from '../../kernels/index.ts';
import { copiesOf, FACE_COUNT, FACES } from '../../rules/index.ts';
import { FEATURES, scaleOf } from './features.ts';
import { WIN_MODEL } from './model.ts';
import type { WinModel } from './model-format.ts';
import { reachTables, spansOf } from './reach.ts';
import { LOG_CEILING, wallWeight } from './table-value.ts';

/** Bytes for the wants of one hand: their number, whether its pattern is concealed, pairs of face and number. */
const WANT_BYTES = 32;
const TABLE_BYTES = 256 * 8;
const SPAN_BYTES = 12;

/** For an instance that holds the card, once. */
export function writeWinModel(
  simd: SimdInstance,
  card: CompiledCard,
  written: WrittenCard,
  model: WinModel = WIN_MODEL,
): void {
  writeFeatures(simd, card, written);
  writeReach(simd, card, written, model);
  const { weights, dealerOffsets } = model;
  const fitted = [LOG_CEILING, ...dealerOffsets, ...FEATURES.map((name) => weights[name])];
  const fittedAt = simd.reserve((fitted.length + 1) * 8);
  const powersAt = simd.reserve(EXP_MINUS_STEPS.byteLength);
  const rackAt = simd.reserve(FACE_COUNT);
  const { buffer } = simd.memory;
  const rack = new Uint8Array(buffer, rackAt, FACE_COUNT);
  const { center, spread } = scaleOf((sample) => {
    rack.set(sample);
    return simd.reach(rackAt);
  });
  new Float64Array(buffer, fittedAt, fitted.length + 1).set([wallWeight(model, center), ...fitted]);
  new Float64Array(buffer, powersAt, EXP_MINUS_STEPS.length).set(EXP_MINUS_STEPS);
  simd.setWinModel(fittedAt, powersAt);
  simd.setScale(center, spread);
}

function writeFeatures(simd: SimdInstance, card: CompiledCard, { rowBytes }: WrittenCard): void {
  const roomAt = simd.reserve(rowBytes * 2);
  const wantsAt = simd.reserve(card.hands.length * WANT_BYTES);
  const copiesAt = simd.reserve(FACE_COUNT);
  const { buffer } = simd.memory;
  const wants = new Uint8Array(buffer, wantsAt, card.hands.length * WANT_BYTES);
  for (const [nth, hand] of card.hands.entries()) wants.set(wantsOf(card, hand), nth * WANT_BYTES);
  new Uint8Array(buffer, copiesAt, FACE_COUNT).set(FACES.map(copiesOf));
  simd.setFeatures(roomAt, wantsAt, copiesAt);
}

function writeReach(
  simd: SimdInstance,
  card: CompiledCard,
  { packed }: WrittenCard,
  { steps }: WinModel,
): void {
  const tables = reachTables(steps).flat();
  const spans = spansOf(card.patterns, packed);
  const tablesAt = simd.reserve(tables.length * TABLE_BYTES);
  const spansAt = simd.reserve(spans.length * SPAN_BYTES);
  const { buffer } = simd.memory;
  for (const [nth, table] of tables.entries()) {
    new Float64Array(buffer, tablesAt + nth * TABLE_BYTES, 256).set(table);
  }
  const list = spans.flatMap(({ from, to, concealed }) => [from, to, concealed ? 1 : 0]);
  new Uint32Array(buffer, spansAt, list.length).set(list);
  simd.setReach(tablesAt, spansAt, spans.length);
}

function wantsOf(card: CompiledCard, { pattern, singles, groups }: Hand): number[] {
  const wants = singles.flatMap((single, face) => {
    const wanted = single + groups[face]!;
    return wanted > 0 ? [face, wanted] : [];
  });
  return [wants.length / 2, card.patterns[pattern]!.concealed ? 1 : 0, ...wants];
}
