// A view delta: applied to an earlier view it gives the view that a newcomer would get.
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { applyDelta, type Table } from '../../shared-engine/protocol/table.ts';
import { viewDeltaSchema } from '../../shared-engine/protocol/views.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { evolve } from '../../shared-engine/rules/exchange/evolve.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { applyViewDelta, viewDelta } from '../../shared-engine/rules/view/delta.ts';
import { type Audience, viewFor } from '../../shared-engine/rules/view/view.ts';
import { opened, playOn } from '../kit/rounds.ts';

const AUDIENCES: readonly Audience[] = [
  ...SEATS.map((seat) => ({ kind: 'seat', seat }) as const),
  { kind: 'spectator' },
];

const EMPTY = { kind: 'empty' } as const;
const TABLE: Omit<Table, 'view'> = {
  code: 'a room',
  you: 0,
  seats: [EMPTY, EMPTY, EMPTY, EMPTY],
  mode: 'friends',
  terms: STANDARD_TERMS.friends,
  card: { id: 'a card', name: 'A card' },
  round: 1,
  remaining: null,
};

const names = fc.string({ minLength: 1, maxLength: 12 });

/** Every round on the way from the deal to the close. */
function stages(name: string, revealRacks: boolean): Round[] {
  const rounds: Round[] = [];
  const last = playOn(opened(name, 0, revealRacks), stream(name, 'players'), (round) => {
    rounds.push(round);
    return false;
  });
  return [...rounds, last.round];
}

describe('a view delta', () => {
  test('V1 V2 a delta turns the earlier view into the later one, for every audience', () => {
    const moments = fc.tuple(names, fc.boolean(), fc.nat(), fc.nat());
    fc.assert(
      fc.property(moments, ([name, revealRacks, one, other]) => {
        const rounds = stages(name, revealRacks);
        const [early, late] = [one % rounds.length, other % rounds.length].sort((a, b) => a - b);
        const [before, now] = [rounds[early!]!, rounds[late!]!];
        for (const audience of AUDIENCES) {
          const delta = viewDeltaSchema.parse(JSON.parse(JSON.stringify(viewDelta(before, now, audience))));
          expect(applyViewDelta(viewFor(before, audience), delta)).toEqual(viewFor(now, audience));
        }
      }),
      { numRuns: 60 },
    );
  });

  test('there is no delta back in time, nor from one deal to another', () => {
    const rounds = stages('back', false);
    const [first, last] = [rounds[0]!, rounds.at(-1)!];
    expect(viewDelta(last, first, { kind: 'spectator' })).toBeNull();
    expect(viewDelta(first, opened('another').round, { kind: 'spectator' })).toBeNull();
  });

  test('L1 there is no delta where the class has advanced, because actual steps join the record', () => {
    const rounds = stages('line', false);
    const [before, last] = [rounds[0]!, rounds.at(-1)!];
    const now = evolve(before, { kind: 'advanced', outcome: last.resolved[0]! });
    expect(now.actualSteps).toEqual([null]);
    for (const audience of AUDIENCES) expect(viewDelta(before, now, audience)).toBeNull();
  });

  test('V1 a delta holds no rack where the rack has not changed', () => {
    const [first, second] = stages('same', false);
    for (const seat of SEATS) {
      const delta = viewDelta(first!, second!, { kind: 'seat', seat });
      expect(delta).not.toHaveProperty('rack');
      expect(delta).toMatchObject({ steps: [] });
    }
  });

  test('a delta for another audience is not applied', () => {
    const [first, second] = stages('strange', false);
    const [seat, spectator] = [AUDIENCES[0]!, AUDIENCES[4]!];
    expect(applyViewDelta(viewFor(first!, seat), viewDelta(first!, second!, spectator)!)).toBeNull();
    expect(applyViewDelta(viewFor(first!, spectator), viewDelta(first!, second!, seat)!)).toBeNull();
    const delta = viewDelta(first!, second!, spectator)!;
    for (const view of [viewFor(first!, seat), null]) {
      expect(applyDelta({ ...TABLE, view }, { viewDelta: delta })).toBeNull();
    }
  });
});
