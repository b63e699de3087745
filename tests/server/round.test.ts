// A whole round over real sockets: four people, people with bots, the deal moving on, each review to its owner.
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { isCommittedRack } from '../../shared-engine/rules/deal/commitment.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { neighbor, SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { checkRound } from '../../shared-engine/rules/exchange/recompute.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { bagOf, facesOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { ALONE, deal, FRIENDS, openRoom, ownView, playOn, sitDown, tableOfFour } from '../kit/http-client.ts';
import { eventsOf } from '../kit/room-logs.ts';
import { startServer, type TestServer } from '../kit/server.ts';

let server: TestServer;
beforeEach(async () => {
  server = await startServer();
});
afterEach(() => server.stop());

describe('four people at their sockets', () => {
  test('play the whole exchange; 152 tiles stay 152 and every rack keeps its size', async () => {
    const { code, peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'four')));

    const racks = peers.map((peer) => ownView(peer).rack);
    const { dealer } = ownView(peers[0]!);
    expect(racks.map((rack) => rack.length)).toEqual(SEATS.map((seat) => (seat === dealer ? 14 : 13)));
    // E2: what the players saw last is what the log replays to.
    const log = (await eventsOf(server.store, code))!.flatMap(({ event }) =>
      event.kind === 'round' ? [event.event] : [],
    );
    const round = replay(log)!;
    expect(round.racks.map(facesOf)).toEqual(racks);
    const { wall } = dealTiles(round.deal);
    expect(sizeOf(bagOf([...racks.flat(), ...wall]))).toBe(152);
  });

  test('Z1 get one review each, of their own seat', async () => {
    const { peers } = await tableOfFour(server);
    await deal(peers);
    await Promise.all(peers.map((peer) => playOn(peer, 'reviews')));
    const reviews = await Promise.all(peers.map((peer) => peer.review()));
    expect(reviews.map(({ review }) => review.seat)).toEqual([0, 1, 2, 3]);
    await Promise.all(peers.map((peer) => peer.roundTrip()));
    for (const peer of peers) expect(peer.messages.filter(({ kind }) => kind === 'review')).toHaveLength(1);
  });

  test('D4 Z2 see the commitment from the deal on, and where racks stay private each can check its own rack at the close', async () => {
    const { code, peers } = await tableOfFour(server);
    await deal(peers);
    const promised = peers.map((peer) => ownView(peer).commitment);
    expect(new Set(promised).size).toBe(1);
    await Promise.all(peers.map((peer) => playOn(peer, 'fair')));
    for (const peer of peers) {
      const { dealer, record, ownLeaf, stage } = ownView(peer);
      const head = { roundId: `${code}/1`, dealer, terms: STANDARD_TERMS.friends };
      const own = { seat: record.seat, rack: record.start };
      expect(isCommittedRack(promised[0]!, head, own, ownLeaf!)).toBe(true);
      expect(stage).toEqual({ phase: 'closed', opened: null, racks: null });
    }
    // The next round of the same table has a commitment of its own, made for its number.
    await deal(peers);
    expect(ownView(peers[0]!).commitment).not.toBe(promised[0]);
  });

  test('D4 Z2 where racks are revealed, everybody at the table can deal and pass the whole round again', async () => {
    const terms = { deadline: null, revealRacks: true } as const;
    const { code, peers } = await tableOfFour(server, { ...FRIENDS, terms });
    await deal(peers);
    const commitment = ownView(peers[0]!).commitment!;
    await Promise.all(peers.map((peer) => playOn(peer, 'all open')));
    for (const peer of peers) {
      const { dealer, record, ownLeaf, stage } = ownView(peer);
      if (stage.phase !== 'closed') throw new Error('not closed');
      const head = { roundId: `${code}/1`, dealer, terms: { ...STANDARD_TERMS.friends, revealRacks: true } };
      const moves = record.steps.filter((step) => step.kind === 'move');
      const seen = { seat: record.seat, rack: record.start, moves };
      const claim = { ...head, ...stage.opened!, commitment, racks: stage.racks!, seen };
      expect(checkRound(claim)).toEqual({ ok: true });
      expect(ownLeaf).toBeNull();
    }
  });

  test('Z2 see all racks at the close only where the terms lay them open', async () => {
    for (const revealRacks of [true, false]) {
      const { peers } = await tableOfFour(server, { ...FRIENDS, terms: { deadline: null, revealRacks } });
      await deal(peers);
      await Promise.all(peers.map((peer) => playOn(peer, `open ${revealRacks}`)));
      const own = peers.map((peer) => ownView(peer).rack);
      for (const peer of peers) {
        const { stage } = ownView(peer);
        expect(stage.phase === 'closed' && stage.racks).toEqual(revealRacks ? own : null);
      }
    }
  });
});

describe('the deal', () => {
  test('D3 moves to the right with every round', async () => {
    const { peers } = await tableOfFour(server);
    const dealers: number[] = [];
    for (let round = 1; round <= 5; round++) {
      await deal(peers);
      dealers.push(ownView(peers[0]!).dealer);
      await Promise.all(peers.map((peer) => playOn(peer, `round ${round}`)));
    }
    for (const [before, after] of dealers.slice(1).entries()) {
      expect(after).toBe(neighbor(SEATS[dealers[before]!]!, 'right'));
    }
    expect(dealers[4]).toBe(dealers[0]);
  });

  test('SC4 waits until everybody connected is ready, and a person may change their mind', async () => {
    const { peers } = await tableOfFour(server);
    const [a, b, c, d] = peers as [
      (typeof peers)[0],
      (typeof peers)[0],
      (typeof peers)[0],
      (typeof peers)[0],
    ];
    for (const peer of [a, b, c]) await peer.act({ kind: 'ready', ready: true });
    await a.act({ kind: 'ready', ready: false });
    await d.act({ kind: 'ready', ready: true });
    await d.roundTrip();
    expect(d.table.round).toBe(0);
    await a.act({ kind: 'ready', ready: true });
    await d.untilTable((table) => table.round === 1);
    expect(d.table.seats.every((seat) => seat.kind === 'person' && !seat.ready)).toBe(true);
  });

  test('comes at once where somebody practises alone, with the bots asked for', async () => {
    const guest = await openRoom(server, ALONE);
    const peer = await sitDown(server, guest);
    await peer.untilTable((table) => table.round === 1);
    const styles = peer.table.seats.map((seat) => (seat.kind === 'bot' ? seat.style : seat.kind));
    expect(styles).toEqual(['person', 'strong', 'casual', 'guarded']);
    await playOn(peer, 'alone');
    expect((await peer.review()).review.seat).toBe(0);
    await deal([peer]);
    expect(peer.table.round).toBe(2);
  });

  test('fills empty seats with bots, who play to the close', async () => {
    const host = await openRoom(server, { ...FRIENDS, bots: ['random', null, null] });
    const peer = await sitDown(server, host);
    expect(peer.table.seats.map(({ kind }) => kind)).toEqual(['person', 'bot', 'empty', 'empty']);
    await deal([peer]);
    expect(peer.table.seats.map(({ kind }) => kind)).toEqual(['person', 'bot', 'bot', 'bot']);
    const names = peer.table.seats.map((seat) => (seat.kind === 'empty' ? '' : seat.name));
    expect(new Set(names).size).toBe(4);
    await playOn(peer, 'with bots');
    const { steps } = ownView(peer).record;
    expect(steps[0]).toMatchObject({ kind: 'move', by: ['player', 'bot', 'bot', 'bot'] });
  });

  test('is another one every time', async () => {
    const commitments = new Set<string | null>();
    for (let round = 0; round < 3; round++) {
      const peer = await sitDown(server, await openRoom(server, ALONE));
      await peer.untilTable((table) => table.round === 1);
      commitments.add(ownView(peer).commitment);
    }
    expect(commitments.size).toBe(3);
  });
});
