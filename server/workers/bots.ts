// Bots that choose in this process and, where they roll deals out, in a worker.
import { setImmediate } from 'node:timers/promises';
import {
  type AnswerChoice,
  botRandom,
  choiceObjection,
  chooseFor,
  type Kernel,
  pendingDecision,
  type Random,
  ROLLOUT_SEEDS,
  type SeatView,
  type StyleName,
  simplestAnswer,
  stepOf,
  usesRollouts,
} from '../../shared-engine/index.ts';
import { errorFacts, type Log } from '../log.ts';
import { HOUSE_CARD_KEY } from '../playing-card.ts';
import type { Bots } from '../work-ports.ts';
import type { CompiledCards } from './compiled-cards.ts';
import { kernelInProcess } from './in-process.ts';
import { affinityKeyOf, workOptions } from './work-budgets.ts';
import type { WorkerPool } from './worker-pool.ts';

/** Chooses where the workers have no answer. */
const SUBSTITUTE: StyleName = 'strong';

/** How the engine's bots are called; a test puts a broken one in its place. */
export type Choose = (
  style: StyleName,
  view: SeatView,
  kernel: Kernel,
  random: Random,
) => AnswerChoice | null;

/**
 * A bot that fails or answers illegally costs nobody the round: the simplest choice takes its place, also where this
 * thread has no kernel of the card.
 */
export function botsInProcess(log: Log, chooseWith: Choose = chooseFor): Bots {
  return {
    async choose({ style, view, card, seed }) {
      // Other rooms and sockets get their turn between two bots.
      await setImmediate();
      const simplest = simplestLegal(view);
      const kernel = kernelInProcess(card);
      if (kernel === null) return simplest;
      try {
        const random = botRandom(seed, simplest.step, view.record.seat);
        const choice = chooseWith(style, view, kernel, random);
        if (choice !== null && choiceObjection(view, choice) === null) return choice;
        log.error({ style, step: simplest.step }, 'a bot answered illegally; the simplest choice is made');
      } catch (error) {
        log.error(
          { style, step: simplest.step, ...errorFacts(error) },
          'a bot failed; the simplest choice is made',
        );
      }
      return simplest;
    },
  };
}

/**
 * Bots that roll deals out, and all bots on a card of somebody's own, choose in the pool; the others, and whatever the
 * pool could not do, in this process.
 */
export function pooledBots(pool: WorkerPool, cards: CompiledCards, inProcess: Bots): Bots {
  return {
    async choose(request) {
      const { style, view, seed, fairnessKey } = request;
      const step = stepOf(view.stage);
      const isQuick = !usesRollouts(style) && request.card.key === HOUSE_CARD_KEY;
      if (isQuick || step === null) return inProcess.choose(request);
      const card = await cards.refOf(request.card, fairnessKey);
      if (card === null) return inProcess.choose(request);
      // The round's seed stays here; this is the number that the bot would draw from it.
      const drawn = botRandom(seed, step, view.record.seat).below(ROLLOUT_SEEDS);
      const options = workOptions('choose', fairnessKey, affinityKeyOf(view.record));
      const pending = pool.run(() => ({ kind: 'choose', card, view, style, seed: drawn }), options);
      const result = await pending.result;
      const choice = result?.kind === 'choose' ? result.choice : null;
      return choice ?? inProcess.choose({ ...request, style: SUBSTITUTE });
    },
  };
}

/** What is always allowed; throws where the open step asks nothing of the seat. */
export function simplestLegal(view: SeatView): AnswerChoice {
  const decision = pendingDecision(view);
  if (decision === null)
    throw new Error('The open step asks nothing of this seat; there is nothing to choose.');
  return simplestAnswer(decision, view.rack);
}
