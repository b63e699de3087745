// The commitment to a deal: what its leaves hold, what each seat can check, and what recomputing a whole round finds.
import { createHash, createHmac } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import {
  commitmentOf,
  DEAL_FORMAT,
  isCommittedRack,
  laterSeed,
  leafProof,
  roundIdOf,
} from '../../shared-engine/rules/deal/commitment.ts';
import { dealTiles } from '../../shared-engine/rules/deal/deal.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { SEATS } from '../../shared-engine/rules/deal/seat.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { checkRound, type RoundClaim } from '../../shared-engine/rules/exchange/recompute.ts';
import { STANDARD_TERMS } from '../../shared-engine/rules/exchange/terms.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { seatView, viewFor } from '../../shared-engine/rules/view/view.ts';
import { opened, playOn, seedNamed } from '../kit/rounds.ts';

const deal = { seed: seedNamed('commitment'), dealer: 1 } as const;
const head = { roundId: roundIdOf('ABCD2345', 3), dealer: 1, terms: STANDARD_TERMS.friends } as const;
const root = commitmentOf(deal, head)!;

describe('the commitment', () => {
  test('D4 the root follows from the six leaves as the rules describe them, by OpenSSL in Node', () => {
    const bytes = (hex: string) => Buffer.from(hex, 'hex');
    const hmac = (key: Buffer, data: string | Buffer) => createHmac('sha256', key).update(data).digest();
    const hash = (...parts: Buffer[]) => createHash('sha256').update(Buffer.concat(parts)).digest();
    const { racks, wall } = dealTiles(deal);
    const later = hmac(bytes(deal.seed), 'later draws').toString('hex');
    const contents: readonly (readonly string[])[] = [...racks.map(facesOf), wall, [later]];
    const secret = hmac(bytes(deal.seed), 'salts');
    const leaves = contents.map((tiles, index) => {
      const salt = hmac(secret, Buffer.of(index)).toString('hex');
      const terms = [
        ['blindPasses', true],
        ['botPace', 'usual'],
        ['cardHelp', 'printed'],
        ['courtesy', 'by-asking'],
        ['deadline', null],
        ['passLog', false],
        ['revealRacks', false],
        ['secondCharleston', 'by-vote'],
        ['whoIsEast', 'in-turn'],
      ];
      const text = JSON.stringify(['quadrille-deal/3', 'ABCD2345/3', 1, terms, index, salt, tiles]);
      return hash(Buffer.of(0), Buffer.from(text));
    });
    const node = (left: Buffer, right: Buffer) => hash(Buffer.of(1), left, right);
    const [a, b, c, d, e, f] = leaves as [Buffer, Buffer, Buffer, Buffer, Buffer, Buffer];
    expect(node(node(node(a, b), node(c, d)), node(e, f)).toString('hex')).toBe(root);
    expect(laterSeed(deal)).toBe(later);
    expect(DEAL_FORMAT).toBe('quadrille-deal/3');
  });

  test('D4 another round, East, way to play or seed has another root', () => {
    const others = [
      commitmentOf(deal, { ...head, roundId: roundIdOf('ABCD2345', 4) }),
      commitmentOf(deal, { ...head, dealer: 2 }),
      commitmentOf(deal, { ...head, terms: STANDARD_TERMS.alone }),
      commitmentOf({ ...deal, seed: seedNamed('another') }, head),
    ];
    expect(new Set([root, ...others]).size).toBe(5);
  });

  test('D4 each seat checks its own rack by its leaf and path, and no other rack passes for it', () => {
    const { racks } = dealTiles(deal);
    for (const seat of SEATS) {
      const proof = leafProof(deal, head, seat);
      const rack = facesOf(racks[seat]);
      const swapped: Face[] = [rack[0] === 'joker' ? 'white' : 'joker', ...rack.slice(1)];
      const holds = (claim: object) => isCommittedRack(root, head, { seat, rack, ...claim }, proof);
      expect(holds({})).toBe(true);
      expect(holds({ rack: rack.toReversed() })).toBe(true);
      expect(holds({ rack: swapped })).toBe(false);
      expect(holds({ rack: rack.slice(1) })).toBe(false);
      expect(holds({ seat: SEATS[(seat + 1) % 4]! })).toBe(false);
      expect(isCommittedRack(root, { ...head, roundId: 'other' }, { seat, rack }, proof)).toBe(false);
      expect(isCommittedRack(seedNamed('other'), head, { seat, rack }, proof)).toBe(false);
    }
  });

  test('D4 the four leaves of the seats have salts and paths of equal length, which no two seats share', () => {
    const proofs = SEATS.map((seat) => leafProof(deal, head, seat));
    expect(new Set(proofs.map(({ path }) => path.length))).toEqual(new Set([3]));
    expect(new Set(proofs.map(({ salt }) => salt)).size).toBe(4);
    for (const { salt, path } of proofs) expect([salt, ...path]).not.toContain(deal.seed);
  });

  test('D4 before the close every view shows the commitment and nothing that opens it', () => {
    for (const reveal of [true, false]) {
      const { round } = opened('commitment', 1, reveal);
      for (const audience of [
        { kind: 'spectator' } as const,
        ...SEATS.map((seat) => ({ kind: 'seat', seat }) as const),
      ]) {
        const view = viewFor(round, audience);
        const hex = JSON.stringify(view).match(/[0-9a-f]{64}/g);
        expect(hex).toEqual([round.commitment]);
      }
    }
  });

  test('D4 Z2 the close opens the whole round where racks are revealed, otherwise to each seat its own leaf', () => {
    for (const reveal of [true, false]) {
      const { round } = playOn(opened('close', 2, reveal), stream('close', 'players'));
      if (round.phase !== 'closed') throw new Error('not closed');
      const views = SEATS.map((seat) => seatView(round, seat));
      for (const { stage, ownLeaf, record } of views) {
        if (stage.phase !== 'closed') throw new Error('not closed');
        expect(stage.opened?.seed).toBe(reveal ? round.deal.seed : undefined);
        expect(ownLeaf === null).toBe(reveal);
        const { seat, start } = record;
        const facts = { ...round, dealer: 2 } as const;
        if (ownLeaf)
          expect(isCommittedRack(round.commitment!, facts, { seat, rack: start }, ownLeaf)).toBe(true);
        else expect(JSON.stringify(views)).toContain(round.deal.seed);
      }
      if (!reveal) {
        expect(JSON.stringify(views)).not.toContain(round.deal.seed);
        expect(JSON.stringify(views)).not.toContain(laterSeed(round.deal));
        expect(viewFor(round, { kind: 'spectator' }).stage).toEqual({
          phase: 'closed',
          opened: null,
          racks: null,
        });
      }
    }
  });
});

/** What somebody on `seat` can say of an open round. */
function claimOf(name: string): RoundClaim {
  const { round, log } = playOn(opened(name, 3, true), stream(name, 'players'));
  const { record, stage } = seatView(round, 1);
  if (stage.phase !== 'closed' || !stage.opened || !stage.racks) throw new Error('not open');
  expect(replay(log)).toEqual(round);
  const moves = record.steps.filter((step) => step.kind === 'move');
  return {
    ...stage.opened,
    roundId: round.roundId,
    dealer: 3,
    terms: round.terms,
    commitment: round.commitment!,
    racks: stage.racks,
    seen: { seat: 1, rack: record.start, moves },
  };
}

describe('an open round', () => {
  const names = Array.from({ length: 40 }, (_, n) => `open ${n}`);

  test('D4 B2 an open round comes out again from its seed and passes, blind draws included', () => {
    const claims = names.map(claimOf);
    for (const claim of claims) expect(checkRound(claim)).toEqual({ ok: true });
    expect(
      claims.filter(({ moves }) => moves.some(({ blind }) => blind.some(Boolean))).length,
    ).toBeGreaterThan(20);
  });

  test('D4 recomputing an open round finds another seed, rack, pass, draw or end', () => {
    for (const name of names.slice(0, 12)) {
      const claim = claimOf(name);
      const { moves, racks, seen } = claim;
      const [rack, ...others] = racks;
      const reason = (change: Partial<RoundClaim>) => {
        const check = checkRound({ ...claim, ...change });
        return check.ok ? null : check.reason;
      };
      const swapped = <T>(items: readonly T[], at: number, item: T) =>
        items.map((it, n) => (n === at ? item : it));
      expect(reason({ seed: 'abc' })).toBe('bad-seed');
      expect(reason({ seed: seedNamed('another') })).toBe('wrong-commitment');
      expect(reason({ dealer: 0 })).toBe('wrong-commitment');
      expect(reason({ terms: STANDARD_TERMS.friends })).toBe('wrong-commitment');
      expect(reason({ seen: { ...seen, rack: seen.rack.slice(1) } })).toBe('wrong-rack');
      expect(reason({ racks: [rack.slice(1), ...others] as never })).toBe('wrong-end');
      expect(reason({ moves: moves.slice(0, -1) })).toBe('wrong-end');
      expect(reason({ moves: moves.toReversed() })).toBe('wrong-move');
      const [first] = moves;
      const given = first!.gave;
      const turned = { ...first!, gave: [given[1], given[2], given[3], given[0]] } as const;
      expect(reason({ moves: swapped(moves, 0, turned) })).toBe('wrong-move');
      const blindAt = moves.findIndex(({ blind }) => blind.some(Boolean));
      if (blindAt < 0) continue;
      const move = moves[blindAt]!;
      const swappedDraw = {
        ...move,
        forwarded: [move.forwarded[1], move.forwarded[0], ...move.forwarded.slice(2)],
      };
      if (move.forwarded[0].join() !== move.forwarded[1].join()) {
        expect(reason({ moves: swapped(moves, blindAt, swappedDraw as never) })).toBe('wrong-move');
      }
      // Numbers that no pass allows are found before anything is drawn, so that a made-up file ends the check at once.
      for (const blind of [-1, 0.5, 4, 1e9]) {
        const wild = { ...move, blind: [blind, blind, blind, blind] } as const;
        expect(reason({ moves: swapped(moves, blindAt, wild) })).toBe('wrong-move');
      }
    }
  });
});
