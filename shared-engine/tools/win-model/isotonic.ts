// Isotonic regression: the rising steps nearest to a series, by pooling adjacent violators.

export interface Block {
  /** First place of the block and one past its last. */
  readonly from: number;
  readonly to: number;
  readonly weight: number;
  readonly value: number;
}

/** The pooled blocks of the weighted least-squares fit that never falls. */
export function risingBlocks(values: readonly number[], weights?: readonly number[]): Block[] {
  const blocks: Block[] = [];
  for (const [place, value] of values.entries()) {
    let block: Block = { from: place, to: place + 1, weight: weights?.[place] ?? 1, value };
    for (let last = blocks.at(-1); last && last.value >= block.value; last = blocks.at(-1)) {
      const weight = last.weight + block.weight;
      const pooled = (last.value * last.weight + block.value * block.weight) / weight;
      block = { from: last.from, to: block.to, weight, value: pooled };
      blocks.pop();
    }
    blocks.push(block);
  }
  return blocks;
}

/** The fit at each place. */
export function isotonic(values: readonly number[], weights?: readonly number[]): number[] {
  return risingBlocks(values, weights).flatMap(({ from, to, value }) =>
    new Array<number>(to - from).fill(value),
  );
}
