// The kernels layer: how near a rack is to the hands of a card, as reference and as SIMD implementations.

export { type PackedCard, packCard, rowAt } from './packed-card.ts';
export { inEachByte, largerWord, largestByte, matchedWord, reaches } from './packed-words.ts';
export { FITTED_SELECTION } from './pass-selection/fitted.ts';
export { createPassChooser, type PassChooser, selectPass } from './pass-selection/reference.ts';
export type { Selection } from './pass-selection/selection.ts';
export { writePassSelection } from './pass-selection/simd.ts';
export { createRng, philox, type Rng, STREAMS } from './philox.ts';
export { EXP_MINUS_STEPS, expMinus, log2 } from './portable-math.ts';
export { createRunningSums } from './running-sums.ts';
export type { SimdInstance } from './simd/host.ts';
export { loadSimd, NO_SIMD, type SimdModule } from './simd/module.ts';
export { type WrittenCard, writeCard } from './simd/write-card.ts';
export type { TileValues } from './tile-value/reference.ts';
export { createTileValues } from './tile-value/simd.ts';
export { sectionsInReach, sectionsNoFurther, toGoBySection } from './tiles-to-go/by-section.ts';
export type { Kernel } from './tiles-to-go/kernel.ts';
export { nearness } from './tiles-to-go/nearness.ts';
export { tilesToGo } from './tiles-to-go/reference.ts';
export { createSwarKernel } from './tiles-to-go/swar.ts';
