// Bots that take their time choose in the pool; the others, and whatever the pool cannot do, here.
import { botStream, openStep, PLAYING_ON_SEEDS, playsOn, type StyleName } from '../../shared-engine/index.ts';
import type { Bots } from '../ports.ts';
import { slipFor } from './cards.ts';
import type { Pool } from './pool.ts';

/** Stands in for a choice that the pool could not make. */
const STAND_IN: StyleName = 'strong';

export function pooledBots(pool: Pool, here: Bots): Bots {
  return {
    async choose(request) {
      const { style, view, seed } = request;
      const step = openStep(view.stage);
      if (!playsOn(style) || step === null) return here.choose(request);
      // The round's seed stays here; the draw is the one the bot would make itself.
      const drawn = botStream(seed, step, view.record.seat).below(PLAYING_ON_SEEDS);
      const card = slipFor(request.card);
      const order = pool.ask(() => ({ kind: 'choose', card, view, style, seed: drawn }), 'live');
      const answer = await order.answer;
      const choice = answer?.kind === 'choose' ? answer.choice : null;
      return choice ?? here.choose({ ...request, style: STAND_IN });
    },
  };
}
