// What somebody is told of a round after the first view makes the view that a newcomer would get.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  type Audience,
  evolve,
  type Round,
  SEATS,
  stream,
  type Table,
  viewFor,
  viewNews,
  viewNewsSchema,
  withNews,
  withViewNews,
} from '../../shared-engine/index.ts';
import { opened, playOn } from '../kit/rounds.ts';

const AUDIENCES: readonly Audience[] = [
  ...SEATS.map((seat) => ({ kind: 'seat', seat }) as const),
  { kind: 'watcher' },
];

const EMPTY = { kind: 'empty' } as const;
const TABLE: Omit<Table, 'view'> = {
  code: 'a room',
  you: 0,
  seats: [EMPTY, EMPTY, EMPTY, EMPTY],
  terms: { deadline: null, layOpen: false },
  card: { id: 'a card', name: 'A card' },
  round: 1,
  remaining: null,
};

const names = fc.string({ minLength: 1, maxLength: 12 });

/** Every round on the way from the deal to the close. */
function stages(name: string, layOpen: boolean): Round[] {
  const rounds: Round[] = [];
  const last = playOn(opened(name, 0, layOpen), stream(name, 'players'), (round) => {
    rounds.push(round);
    return false;
  });
  return [...rounds, last.round];
}

describe('news of a round', () => {
  test('V1 V2 make the view of the later moment out of the earlier one, for every audience', () => {
    const moments = fc.tuple(names, fc.boolean(), fc.nat(), fc.nat());
    fc.assert(
      fc.property(moments, ([name, layOpen, one, other]) => {
        const rounds = stages(name, layOpen);
        const [early, late] = [one % rounds.length, other % rounds.length].sort((a, b) => a - b);
        const [before, now] = [rounds[early!]!, rounds[late!]!];
        for (const audience of AUDIENCES) {
          const news = viewNewsSchema.parse(JSON.parse(JSON.stringify(viewNews(before, now, audience))));
          expect(withViewNews(viewFor(before, audience), news)).toEqual(viewFor(now, audience));
        }
      }),
      { numRuns: 60 },
    );
  });

  test('do not go back, nor from one deal to another', () => {
    const rounds = stages('back', false);
    const [first, last] = [rounds[0]!, rounds.at(-1)!];
    expect(viewNews(last, first, { kind: 'watcher' })).toBeNull();
    expect(viewNews(first, opened('another').round, { kind: 'watcher' })).toBeNull();
  });

  test('L1 are not made where the class has gone on, for the record tells what the seat did itself', () => {
    const rounds = stages('line', false);
    const [before, last] = [rounds[0]!, rounds.at(-1)!];
    const now = evolve(before, { kind: 'followed', outcome: last.settled[0]! });
    expect(now.own).toEqual([null]);
    for (const audience of AUDIENCES) expect(viewNews(before, now, audience)).toBeNull();
  });

  test('V1 say nothing of a rack that is as it was', () => {
    const [first, second] = stages('same', false);
    for (const seat of SEATS) {
      const news = viewNews(first!, second!, { kind: 'seat', seat });
      expect(news).not.toHaveProperty('rack');
      expect(news).toMatchObject({ steps: [] });
    }
  });

  test('of another audience are not taken', () => {
    const [first, second] = stages('strange', false);
    const [seat, watcher] = [AUDIENCES[0]!, AUDIENCES[4]!];
    expect(withViewNews(viewFor(first!, seat), viewNews(first!, second!, watcher)!)).toBeNull();
    expect(withViewNews(viewFor(first!, watcher), viewNews(first!, second!, seat)!)).toBeNull();
    const news = viewNews(first!, second!, watcher)!;
    for (const view of [viewFor(first!, seat), null]) {
      expect(withNews({ ...TABLE, view }, { viewNews: news })).toBeNull();
    }
  });
});
