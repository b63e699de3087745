// Chooses by playing out what could be chosen in sampled deals that the seat cannot rule out.
import {
  type Alternative,
  type Analyst,
  asks,
  blindNumbers,
  createDealSource,
  offeredChoice,
  passesOf,
  screen,
  votes,
} from '../analysis/index.ts';
import { type RolloutStyle, STYLE_DATA, type StyleName } from '../policy/index.ts';
import {
  type AnswerChoice,
  FACES,
  PASS_SIZE,
  type PendingDecision,
  type SeatRecord,
  sortFaces,
} from '../rules/index.ts';

/** The deals of one choice are sampled from one of so many seeds. */
export const ROLLOUT_SEEDS = 0x8000_0000;

/** Whether a style takes so long that its choices belong to another thread than the one that serves tables. */
export function usesRollouts(style: StyleName): boolean {
  return STYLE_DATA[style].kind === 'rollout';
}

export interface RolloutTerms extends Omit<RolloutStyle, 'kind'> {
  /** A whole number below `ROLLOUT_SEEDS`. */
  readonly seed: number;
}

/** The same record, analyst and terms give the same choice, however long it takes. */
export function chooseByRollouts(
  decision: PendingDecision,
  record: SeatRecord,
  analyst: Analyst,
  { candidates, rounds, seed }: RolloutTerms,
): AnswerChoice {
  const { leaf } = analyst;
  // Any answer will do: the situation is what was known before it.
  const { situation } = offeredChoice(record, answerWith(decision, { tiles: [], number: 0 }), 'bot');
  const alternatives = alternativesFor();
  const [first] = alternatives;
  if (!first) throw new RangeError('There is nothing to choose from.');
  if (alternatives.length === 1) return answerWith(decision, first);
  const source = createDealSource(analyst, situation, { deals: seed, noise: seed });
  const offered = { alternatives, chosen: first };
  const { finalists } = screen(source, situation.seat, offered, {
    firstBatches: 0,
    candidates,
    rounds,
  });
  return answerWith(decision, finalists[0]!.alternative);

  function alternativesFor(): readonly Alternative[] {
    switch (decision.kind) {
      case 'vote':
        return votes();
      case 'ask':
        return asks();
      case 'pass': {
        const known = passesOf(situation, decision.count, leaf).slice(0, candidates - PASS_SIZE);
        return decision.blindAllowed ? [...known, ...blindNumbers(situation, leaf).slice(1)] : known;
      }
    }
  }
}

function answerWith(decision: PendingDecision, chosen: Pick<Alternative, 'tiles' | 'number'>): AnswerChoice {
  switch (decision.kind) {
    case 'vote':
      return { kind: 'vote', step: 'vote', go: chosen.number === 1 };
    case 'ask':
      return { kind: 'ask', step: 'courtesy-ask', count: chosen.number ?? 0 };
    case 'pass': {
      const { step, count, blindAllowed } = decision;
      const tiles = sortFaces(chosen.tiles.map((face) => FACES[face]!));
      return { kind: 'pass', step, tiles, blind: blindAllowed ? count - tiles.length : 0 };
    }
  }
}
