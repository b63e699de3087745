// How the numbers of a review were made and what they assume.
import { BASIS } from '../basis.ts';

/** What belongs together, under a heading. */
interface MethodPoint {
  readonly title: string;
  readonly sentences: readonly string[];
}

const QUICK: readonly MethodPoint[] = [
  {
    title: 'The passes',
    sentences: [
      'At first look, every legal pass is put in order by the tiles it keeps.',
      `The first ${BASIS.passesTried} and yours were each tried with the same ${BASIS.arrivals} sets of tiles coming in.`,
      'These were drawn evenly from the tiles you had not seen; players do not pass evenly, so this is a rough look.',
      'If yours comes out behind all others that were tried, its place is the one it had at first.',
    ],
  },
  {
    title: 'Votes and numbers',
    sentences: [
      'Continuing or stopping was tried with simple passes.',
      'The player across was taken to ask for 0, 1, 2 or 3 equally often.',
    ],
  },
  {
    title: 'What counts',
    sentences: [
      'Closeness is above all the tiles to go, and a little the number of hands that are near.',
      'It looks at this rack alone, not at what the pass did for your neighbor.',
    ],
  },
];

const DEEP: readonly MethodPoint[] = [
  {
    title: 'The racks of the others',
    sentences: [
      'When we play the round out after a choice, we deal the others racks that they could have had.',
      'These fit the tiles you held, passed and received, and how players choose what to pass.',
      'How the others voted, what they asked for and how many they passed blind are not used as evidence.',
    ],
  },
  {
    title: 'How we play on',
    sentences: [
      'From there all four, you too, pass simply, each seeing its own tiles alone.',
      'Wins in 100 games: from all four racks at the close we judge how often you would be first with a hand.',
      'How that follows from racks was learned from simulated play.',
      'So what a pass gave away is part of what it cost.',
    ],
  },
  {
    title: 'What your choice is compared with',
    sentences: [
      'Every choice you could make is played on a few times, the best of them more often.',
      'That search only picks what yours is compared with; verdict and numbers come from fresh deals.',
      'On those, we stop trying a choice once it can no longer matter.',
    ],
  },
  {
    title: 'What else is told',
    sentences: [
      'How much a pass helped your neighbor is measured on some of these deals, and compared with what club players would pass.',
      'Where your rack ends, and which one tile matters, is counted in other deals.',
      'What is told of the close is about all these games, not about how your round ended.',
      'The closest hands of a rack are all those that need the fewest tiles; there may be many.',
    ],
  },
  {
    title: 'How sure it is',
    sentences: [
      'Chance may make a loss look larger or smaller, and we reckon by how much.',
      'In about 95 of 100 choices it is off by no more than that.',
    ],
  },
  {
    title: 'What the verdicts mean',
    sentences: [
      'Costly means a loss above 1 win in 100 games even if chance made it look larger; a little worse, above 0.',
      'Best means that nothing else came out better; just as good, that nothing is better by more than 1.',
      'Can’t say means that something may be.',
    ],
  },
];

const LEDGER: readonly MethodPoint[] = [
  {
    title: 'What is yours, and what is luck',
    sentences: [
      'Luck and choices: before each choice we look at your chance if our steady player chose from there on.',
      'What your choice changes in that chance counts as yours; what changes before your next choice counts as luck.',
    ],
  },
  {
    title: 'Who plays',
    sentences: [
      'The steady player passes what the hands within your reach need least and looks at nothing else.',
      'The others then pass as club players do.',
      'Against such players good and bad luck even out over many rounds.',
    ],
  },
  {
    title: 'Why other numbers differ',
    sentences: [
      'East begins: the later a seat has its turn, the less an average deal is worth there.',
      'For single steps we take the others for a little stronger than club players, so wins are usually rarer there.',
      'The whole numbers of the text are rounded so that they add up.',
    ],
  },
  {
    title: 'What a neighbor ended with',
    sentences: [
      'What a neighbor ended with is a guess from your own tiles, what came to you, and how players choose what to pass.',
    ],
  },
];

/** Added where a busy server looked less closely than it would have. */
export const REDUCED_BUDGET =
  'Some choices were played on fewer times than usual, because the server was busy. Each says how often.';

/** As a review stores them: all sentences in a row. */
export const METHOD = textOf(QUICK);
export const DEEP_METHOD = textOf(DEEP);
export const LEDGER_METHOD = textOf(LEDGER);

/** A part of the method of a review; `whole`, which has no points, where another version wrote it. */
export interface MethodPart {
  readonly kind: 'quick' | 'deep' | 'ledger' | 'reduced' | 'whole';
  readonly text: string;
  /** The same under headings; empty where it is short. */
  readonly points: readonly MethodPoint[];
}

const PARTS: readonly MethodPart[] = [
  { kind: 'quick', text: METHOD, points: QUICK },
  { kind: 'deep', text: DEEP_METHOD, points: DEEP },
  { kind: 'ledger', text: LEDGER_METHOD, points: LEDGER },
  { kind: 'reduced', text: REDUCED_BUDGET, points: [] },
];

/** The method of a review in the parts it was put together from, in their order. */
export function methodParts(method: string): readonly MethodPart[] {
  const found = PARTS.filter(({ text }) => method.includes(text));
  const isAll = found.map(({ text }) => text).join(' ').length === method.length;
  return isAll ? found : [{ kind: 'whole', text: method, points: [] }];
}

function textOf(points: readonly MethodPoint[]): string {
  return points.flatMap(({ sentences }) => sentences).join(' ');
}
