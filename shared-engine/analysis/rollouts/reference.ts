// The plain playouts: worlds in, outlooks out, all seats playing on.
import type { CompiledCard } from '../../card/compiled.ts';
import { ACT_BYTES, type Playouts, RESULT_WIDTH, WORLD_BYTES } from './batch.ts';
import { createExchange } from './exchange.ts';
import type { Leaf } from './leaf.ts';

export function createPlayouts(card: CompiledCard, leaf: Leaf): Playouts {
  const exchange = createExchange(card, leaf);
  return {
    run(batch) {
      const { count, alternatives, worlds, acts } = batch;
      const out = new Float64Array(count * alternatives * RESULT_WIDTH);
      for (let world = 0; world < count; world++) {
        exchange.begin(batch, batch.keys[world]!);
        for (let a = 0; a < alternatives; a++) {
          const nth = world * alternatives + a;
          exchange.play(worlds, world * WORLD_BYTES, acts, nth * ACT_BYTES, out, nth * RESULT_WIDTH);
        }
      }
      return out;
    },
  };
}
