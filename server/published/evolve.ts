// Applies an event to a published drill. Every event of the log is trusted, and none fails.
import { NO_COUNTS, STEPS, withRelease } from '../../shared-engine/index.ts';
import type { Recorded } from '../aggregate/recorded.ts';
import type { PublishedEvent } from './event.ts';
import { keysAfter } from './keys.ts';
import { bucketOf, type DealState, inOrder, type PublishedState, roundsOf } from './state.ts';

const NOTHING_PLAYED: DealState = {
  ...NO_COUNTS,
  through: 0,
  waiting: [],
  waitingQuestions: [],
  spreads: [],
  questions: [],
  names: {},
};

/** The drill right after its first event; null where that is another one. */
export function beginPublished({ seq, event }: Recorded<PublishedEvent>): PublishedState | null {
  if (event.kind !== 'published') return null;
  const { drill, deals, terms, until, card, secretHash } = event;
  return {
    seq,
    drill,
    deals,
    terms,
    card,
    secretHash,
    until,
    isWithdrawn: false,
    keys: [],
    rounds: 0,
    asked: 0,
    unasked: [],
    players: {},
    byDeal: deals.map(() => NOTHING_PLAYED),
    analyzed: {},
  };
}

export function evolvePublished(
  before: PublishedState,
  { seq, at, event }: Recorded<PublishedEvent>,
): PublishedState {
  const state: PublishedState = { ...before, seq };
  switch (event.kind) {
    case 'published':
      return state;
    case 'counted':
      return withRound(state, event);
    case 'released': {
      const { deal, through, taken, spreads, questions } = event;
      return withDeal(state, deal, (one) => ({
        ...one,
        ...withRelease(one, one.waiting, taken),
        through,
        spreads,
        waiting: [],
        waitingQuestions: [],
        questions: [...one.questions, ...questions],
      }));
    }
    case 'analyzed':
      // What was stored first stands.
      return { ...state, analyzed: { ...event.choices, ...state.analyzed } };
    case 'extended':
      return { ...state, until: event.until };
    case 'withdrawn':
      return { ...state, isWithdrawn: true };
    case 'forgotten':
      return withoutPlayer(state, event.player);
    case 'key-made':
    case 'key-revoked':
      return { ...state, keys: keysAfter(state.keys, event, at) };
  }
}

function withRound(
  state: PublishedState,
  { player, id, deal, choices, questions = [], unasked, name }: PublishedEvent & { kind: 'counted' },
): PublishedState {
  const bucket = bucketOf(player);
  const mine = { ...roundsOf(state, player), [deal]: id };
  const counted: PublishedState = {
    ...state,
    rounds: state.rounds + 1,
    asked: state.asked + questions.length,
    unasked: unasked ? [...state.unasked, id] : state.unasked,
    players: { ...state.players, [bucket]: { ...state.players[bucket], [player]: mine } },
  };
  return withDeal(counted, deal, (one) => {
    const names = name === undefined ? one.names : { ...one.names, [player]: name };
    if (!state.terms.names) {
      const waitingQuestions = [...one.waitingQuestions, ...questions];
      return { ...one, waiting: [...one.waiting, choices], waitingQuestions };
    }
    // Where players give a name they are told that every choice is shown as it comes.
    const told = withRelease(one, [choices], STEPS);
    const asked = inOrder([...one.questions, ...questions]);
    return { ...one, ...told, names, through: one.through + 1, questions: asked };
  });
}

function withDeal(
  state: PublishedState,
  place: number,
  change: (deal: DealState) => DealState,
): PublishedState {
  return { ...state, byDeal: state.byDeal.map((one, index) => (index === place ? change(one) : one)) };
}

function withoutPlayer(state: PublishedState, player: string): PublishedState {
  const bucket = bucketOf(player);
  const { [player]: _, ...others } = state.players[bucket] ?? {};
  return {
    ...state,
    players: { ...state.players, [bucket]: others },
    byDeal: state.byDeal.map((deal) => {
      const { [player]: __, ...names } = deal.names;
      return { ...deal, names };
    }),
  };
}
