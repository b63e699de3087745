// A teacher's prepared deal at the table: its racks, its wall, and that everybody is told so.
import { expect, test } from 'vitest';
import { roomEvents } from '../../server/room/stored-event.ts';
import { chooseFor } from '../../shared-engine/bots/choose.ts';
import { finishRound } from '../../shared-engine/bots/finish-round.ts';
import { viewSchema } from '../../shared-engine/protocol/views.ts';
import { dealTiles, type PreparedDeal } from '../../shared-engine/rules/deal/deal.ts';
import { forFour, SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { decide, openRound } from '../../shared-engine/rules/exchange/decide.ts';
import { begin, evolve, replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { addTo, EMPTY_BAG, FULL_SET, facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { type Audience, seatView, viewFor } from '../../shared-engine/rules/view/view.ts';
import { houseKernel } from '../kit/reviews.ts';
import { seedNamed } from '../kit/rounds.ts';

function preparedFrom(name: string, seed = seedNamed(`after ${name}`)): PreparedDeal {
  const { racks } = dealTiles({ seed: seedNamed(name), dealer: 2 });
  return { seed, dealer: 2, prepared: forFour((seat) => facesOf(racks[seat])) };
}

const deal = preparedFrom('prepared');
const dealt = openRound(deal, { revealRacks: false });
const played = finishRound(begin(dealt), (view, random) => chooseFor('typical', view, houseKernel, random));
const everybody: readonly Audience[] = [
  { kind: 'spectator' },
  ...SEATS.map((seat) => ({ kind: 'seat', seat }) as const),
];

test('D2 a prepared deal has the teacher’s racks, and its wall is the rest of the set', () => {
  const { racks, wall } = dealTiles(deal);
  expect(racks.map(facesOf)).toEqual(deal.prepared);
  expect(wall).toHaveLength(99);
  expect(addTo(addTo(EMPTY_BAG, deal.prepared.flat()), wall)).toEqual(FULL_SET);
});

test('D1 the seed decides the wall of a prepared deal and never its racks', () => {
  const other = { ...deal, seed: seedNamed('another wall') };
  expect(dealTiles(other).racks).toEqual(dealTiles(deal).racks);
  expect(dealTiles(other).wall).not.toEqual(dealTiles(deal).wall);
  expect(dealTiles(deal)).toEqual(dealTiles(preparedFrom('prepared')));
});

test('D4 a prepared deal says so to everybody from the first view on, and has no commitment', () => {
  for (const audience of everybody) {
    expect(viewFor(begin(dealt), audience).commitment).toBeNull();
    const closed = viewFor(played.round, audience);
    expect(closed.commitment).toBeNull();
    expect(closed.stage).toEqual({ phase: 'closed', opened: null, racks: null });
  }
});

test('D4 neither the seed of a prepared deal nor its hash is ever in a view', () => {
  for (const round of [begin(dealt), played.round]) {
    for (const audience of everybody) {
      const text = JSON.stringify(viewFor(round, audience));
      expect(text).not.toContain(deal.seed);
      expect(text).not.toMatch(/[0-9a-f]{64}/);
    }
  }
});

test('a view of a prepared deal passes its schema unchanged', () => {
  for (const audience of everybody) {
    const view = viewFor(played.round, audience);
    expect(viewSchema.parse(JSON.parse(JSON.stringify(view)))).toEqual(view);
  }
});

test('E2 the log of a prepared round is read back and replays to the same round', () => {
  const events = [dealt, ...played.events].map((event) => ({ kind: 'round', event }) as const);
  const read = roomEvents.eventsFrom(roomEvents.textOf(events));
  expect(replay(read.flatMap((stored) => (stored.kind === 'round' ? stored.event : [])))).toEqual(
    played.round,
  );
});

test('equal choices of one player lead to equal rounds at any number of tables', () => {
  const tables = [1, 2, 3].map(
    () => finishRound(begin(dealt), (view, random) => chooseFor('strong', view, houseKernel, random)).round,
  );
  expect(tables[1]).toEqual(tables[0]);
  expect(tables[2]).toEqual(tables[0]);
});

test('a different first pass changes what arrives and not how the bots choose', () => {
  const start = begin(dealt);
  const rack = seatView(start, 0).rack.filter((face) => face !== 'joker');
  const afterPass = (tiles: typeof rack) => {
    const decision = decide(start, {
      kind: 'pass',
      step: 'first-right',
      tiles,
      blind: 0,
      seat: 0,
      by: 'player',
    });
    if (!decision.ok) throw new Error(decision.message);
    const mine = decision.events.reduce(evolve, start);
    return finishRound(mine, (view, random) => chooseFor('typical', view, houseKernel, random)).round;
  };
  const [one, other] = [afterPass(rack.slice(0, 3)), afterPass(rack.slice(-3))];
  const firstPass = ({ resolved }: typeof one) => (resolved[0]?.kind === 'move' ? resolved[0].gave : null);
  expect(firstPass(one)!.slice(1)).toEqual(firstPass(other)!.slice(1));
  expect(firstPass(one)![0]).not.toEqual(firstPass(other)![0]);
});
