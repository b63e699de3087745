// Going on without the server: another round that fits everything one seat knows, and nothing that it does not.
import { describe, expect, it } from 'vitest';
import { possibleRound } from '../../shared-engine/analysis/belief/possible-round.ts';
import { houseCard } from '../../shared-engine/card/house/card.ts';
import { loadSimd } from '../../shared-engine/kernels/simd/module.ts';
import { createTileValues } from '../../shared-engine/kernels/tile-value/simd.ts';
import { createChoiceModel } from '../../shared-engine/policy/choice-model.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin, evolve } from '../../shared-engine/rules/exchange/evolve.ts';
import { stepOf } from '../../shared-engine/rules/exchange/pending-decision.ts';
import type { Round } from '../../shared-engine/rules/exchange/round.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { type SeatView, seatView } from '../../shared-engine/rules/view/view.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';

const model = createChoiceModel(createTileValues(await loadSimd(), houseCard()));

/** A round at each of its steps, whoever passes whatever blind. */
function moments(name: string, dealer: Seat): Round[] {
  const random = stream(name, 'choices');
  const found: Round[] = [];
  let now = opened(name, dealer);
  while (now.round.phase !== 'closed') {
    found.push(now.round);
    const steps = now.round.resolved.length;
    now = playOn(now, random, ({ resolved }) => resolved.length > steps);
  }
  return found;
}

function goneOn(view: SeatView, seed: string): Round {
  const possible = possibleRound(model, view, seed);
  if (possible === null) throw new Error(`no way at ${stepOf(view.stage)}`);
  const dealt = begin(openRound(possible.deal, { ...view.terms, revealRacks: false }));
  return possible.outcomes.reduce((round, outcome) => evolve(round, { kind: 'resolved', outcome }), dealt);
}

describe('going on without the server', () => {
  it('G1 at every step the seat holds, has given, got and seen the same, and the hidden tiles lie otherwise', () => {
    let otherwise = 0;
    let looked = 0;
    for (const dealer of [0, 1] as const) {
      for (const round of moments(`gone on ${dealer}`, dealer)) {
        const view = seatView(round, 1);
        const seed = seedNamed(`anew ${looked++}`);
        const next = goneOn(view, seed);
        const { rack, record, stage } = seatView(next, 1);
        expect([rack, record.start, record.steps]).toEqual([view.rack, view.record.start, view.record.steps]);
        expect(stepOf(stage)).toBe(stepOf(view.stage));
        const tiles = SEATS.flatMap((seat) => facesOf(next.racks[seat]));
        expect(tiles).toHaveLength(53);
        if (String(next.racks[2]) !== String(round.racks[2])) otherwise++;
        expect(goneOn(view, seed)).toEqual(next);
      }
    }
    expect([looked > 12, otherwise]).toEqual([true, looked]);
  });

  it('G2 what follows of a round gone on depends on what the seat knows, on the new seed and on nothing else', () => {
    const [first] = moments('one deal', 0);
    const view = seatView(first!, 1);
    const { commitment, ...known } = view;
    expect(commitment).not.toBeNull();
    const seed = seedNamed('the same');
    expect(goneOn({ ...known, commitment: null }, seed)).toEqual(goneOn(view, seed));
    expect(goneOn(view, seedNamed('another')).racks[2]).not.toEqual(goneOn(view, seed).racks[2]);
  });
});
