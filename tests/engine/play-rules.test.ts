// The rules of the simulated play, each on a position made by hand.
import { expect, test } from 'vitest';
import { chooseCall, chooseJokerExchange } from '../../shared-engine/analysis/play/choose-move.ts';
import { createDanger } from '../../shared-engine/analysis/play/danger.ts';
import { createEvaluator } from '../../shared-engine/analysis/play/evaluator.ts';
import {
  completedPattern,
  offerObjection,
  turnObjection,
} from '../../shared-engine/analysis/play/legality.ts';
import { afterOffer, afterTurn } from '../../shared-engine/analysis/play/move.ts';
import { type Offer, openPlay } from '../../shared-engine/analysis/play/play.ts';
import { playerView } from '../../shared-engine/analysis/play/player-view.ts';
import { createPlayers } from '../../shared-engine/analysis/play/simulate.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { forFour, SEATS, type Seat } from '../../shared-engine/rules/deal/seat.ts';
import { countOf, sizeOf } from '../../shared-engine/rules/tiles/bag.ts';
import { type Face, faceIndex } from '../../shared-engine/rules/tiles/face.ts';
import { fourHoldings, group, holdingOf, offerOf, SMALL_PLAY, turnOf } from '../kit/play-positions.ts';

const evaluator = createEvaluator(SMALL_PLAY);

function players(name: string) {
  return createPlayers(
    SMALL_PLAY,
    forFour(() => createEvaluator(SMALL_PLAY)),
    createDanger(SMALL_PLAY),
    stream(name, 'play'),
  );
}

function callOf(offer: Offer, seat: Seat) {
  return chooseCall(SMALL_PLAY, evaluator, playerView(offer, seat), offer.face);
}

function mayExpose(offer: Offer, seat: Seat, size: number) {
  return offerObjection(SMALL_PLAY, offer, { kind: 'expose', seat, size });
}

/** Holdings that lack one tile, the one they are named by, of the pattern `open`. */
const READY: Readonly<Record<'north' | 'east' | 'south', string>> = {
  north: 'east*4 south*3 west*3 north bam-1*2',
  east: 'east*3 south*3 west*3 north*2 bam-1*2',
  south: 'east*4 south*2 west*3 north*2 bam-1*2',
};

test('P1 the dealer begins with the fourteenth tile and discards; the next to the right draws', () => {
  const hands = fourHoldings({ 2: holdingOf('crak-9*4 dot-5*4 dot-6*4 dot-7*2') });
  const wall: Face[] = ['bam-9', 'bam-8'];
  const start = openPlay({
    racks: [hands[0].concealed, hands[1].concealed, hands[2].concealed, hands[3].concealed],
    wall,
    dealer: 2,
  });
  expect(start.seat).toBe(2);
  const discarded = afterTurn(start, { kind: 'discard', face: faceIndex('dot-7') });
  expect(discarded).toMatchObject({ phase: 'offer', from: 2, face: faceIndex('dot-7'), drawn: 0 });
  if (discarded.phase !== 'offer') throw new Error('a discard is on offer');
  const next = afterOffer(discarded, { kind: 'no-call' });
  expect(next).toMatchObject({ phase: 'turn', seat: 3, drawn: 1 });
  expect(countOf(next.holdings[3].concealed, 'bam-9')).toBe(1);
  expect(next.holdings.map(({ concealed }) => sizeOf(concealed))).toEqual([13, 13, 13, 14]);
});

test('P2 a discard may be called for a group; natural tiles go first, then jokers, and the caller discards', () => {
  const caller = holdingOf('east*2 joker south*3 west*2 north*2 bam-1*2 bam-9');
  const offer = offerOf(0, 'east', { 2: caller });
  expect(mayExpose(offer, 2, 4)).toBeNull();
  const called = afterOffer(offer, { kind: 'expose', seat: 2, size: 4 });
  expect(called).toMatchObject({ phase: 'turn', seat: 2, drawn: 0 });
  expect(called.holdings[2].exposed).toEqual([group('east', 4, 1)]);
  expect(sizeOf(called.holdings[2].concealed)).toBe(10);
  if (called.phase !== 'turn') throw new Error('the caller is to move');
  const after = afterTurn(called, { kind: 'discard', face: faceIndex('bam-9') });
  if (after.phase !== 'offer') throw new Error('a discard is on offer');
  expect(afterOffer(after, { kind: 'no-call' })).toMatchObject({ phase: 'turn', seat: 3 });
});

test('P2 a group needs tiles of its own face or jokers: with one natural tile alone it cannot be called', () => {
  const offer = offerOf(0, 'east', { 2: holdingOf('east south*3 west*3 north*2 bam-1*2 bam-9*2') });
  expect(mayExpose(offer, 2, 3)).toBe('not-held');
  expect(callOf(offer, 2)).toBeNull();
});

test('P3 a tile for a pair cannot be called while another is missing too', () => {
  const offer = offerOf(0, 'north', { 1: holdingOf('east*4 south*3 west*2 north bam-1*2 bam-9') });
  expect(mayExpose(offer, 1, 2)).toBe('too-small');
  expect(mayExpose(offer, 1, 3)).toBe('not-held');
  expect(callOf(offer, 1)).toBeNull();
});

test('P3 the last tile of a hand can be called, even for a pair', () => {
  const offer = offerOf(0, 'north', { 1: holdingOf(READY.north) });
  expect(offerObjection(SMALL_PLAY, offer, { kind: 'finish', seat: 1, pattern: 0 })).toBeNull();
  expect(callOf(offer, 1)).toBe('completes');
  expect(players('last tile').answerDiscard(offer)).toEqual({ kind: 'finish', seat: 1, pattern: 0 });
});

test('P4 a discarded joker cannot be called, not even by a seat that lacks one tile of a group', () => {
  const offer = offerOf(0, 'joker', { 1: holdingOf(READY.east) });
  expect(offerObjection(SMALL_PLAY, offer, { kind: 'finish', seat: 1, pattern: 0 })).toBe('joker-called');
  expect(mayExpose(offer, 1, 3)).toBe('joker-called');
  expect(callOf(offer, 1)).toBeNull();
});

test('P4 jokers complete groups, never a pair', () => {
  expect(completedPattern(SMALL_PLAY, holdingOf('east*2 joker*2 south*3 west*3 north*2 bam-1*2'))).toBe(0);
  expect(completedPattern(SMALL_PLAY, holdingOf('east*4 south*3 west*3 north joker bam-1*2'))).toBeNull();
  expect(evaluator.toGo(holdingOf('east*4 south*3 west*3 north joker bam-1*2'))).toBe(1);
});

test('P5 a concealed pattern may not be exposed', () => {
  const offer = offerOf(0, 'red', { 3: holdingOf('red*3 green*3 white*3 north*3 bam-9') });
  expect(mayExpose(offer, 3, 4)).toBe('no-such-group');
  expect(callOf(offer, 3)).toBeNull();
});

test('P5 the last tile of a concealed pattern can be called', () => {
  const offer = offerOf(0, 'red', { 3: holdingOf('red*3 green*3 white*3 north*4') });
  expect(callOf(offer, 3)).toBe('completes');
  expect(offerObjection(SMALL_PLAY, offer, { kind: 'finish', seat: 3, pattern: 2 })).toBeNull();
});

test('P6 exposed groups bind: a pattern that wants another size is out of reach, and so is a concealed one', () => {
  const tiles = 'south*3 west*3 north*2 bam-1*2';
  expect(completedPattern(SMALL_PLAY, holdingOf(tiles, [group('east', 4, 1)]))).toBe(0);
  expect(completedPattern(SMALL_PLAY, holdingOf('south*3 west*4 north*2 bam-1*2', [group('east', 3)]))).toBe(
    1,
  );
  expect(completedPattern(SMALL_PLAY, holdingOf(`${tiles} joker`, [group('east', 3)]))).toBe(1);
  expect(evaluator.toGo(holdingOf('south*3 west*3 north*2 bam-1*2', [group('east', 3)]))).toBe(1);
  expect(evaluator.toGo(holdingOf('green*3 white*3 north*4', [group('red', 4)]))).toBe(14);
});

test('P6 no group is exposed that no pattern wants beside those already exposed', () => {
  const open = [group('east', 4)];
  const offer = offerOf(0, 'west', { 1: holdingOf('west*3 south*2 north*2 bam-1*2', open) });
  expect(mayExpose(offer, 1, 3)).toBeNull();
  expect(mayExpose(offer, 1, 4)).toBe('no-such-group');
});

test('P7 on its turn a seat may exchange a natural tile for a joker of an exposed group', () => {
  const owner = holdingOf('dot-8*4 dot-9*4 red', [group('east', 4, 2)]);
  const play = turnOf(0, { 0: holdingOf('east south*3 west*2 north*2 bam-1*2 bam-8*4'), 3: owner });
  expect(
    turnObjection(SMALL_PLAY, play, { kind: 'exchange-joker', owner: 3, face: faceIndex('east') }),
  ).toBeNull();
  const after = afterTurn(play, { kind: 'exchange-joker', owner: 3, face: faceIndex('east') });
  expect(after).toMatchObject({ phase: 'turn', seat: 0 });
  expect(after.holdings[3].exposed).toEqual([group('east', 4, 1)]);
  expect(countOf(after.holdings[0].concealed, 'joker')).toBe(1);
  expect(countOf(after.holdings[0].concealed, 'east')).toBe(0);
});

test('P7 a seat takes a joker that helps it, and takes none from a group that has none', () => {
  const mine = 'east south*3 west*2 north*2 bam-1*2 bam-8*4';
  const lent = [group('east', 4, 1)];
  const own = holdingOf('west*2 south*2 north*2 bam-1*2 east bam-9', lent);
  const helps = turnOf(0, { 0: own, 1: holdingOf('crak-1*4 crak-2*4 crak-3*4 crak-4') });
  expect(chooseJokerExchange(evaluator, playerView(helps, 0))).toEqual({ owner: 0, face: faceIndex('east') });
  const none = turnOf(0, { 0: holdingOf(mine), 3: holdingOf('dot-8*4 dot-9*4 red*2', [group('east', 3)]) });
  expect(turnObjection(SMALL_PLAY, none, { kind: 'exchange-joker', owner: 3, face: faceIndex('east') })).toBe(
    'nothing-to-exchange',
  );
  expect(chooseJokerExchange(evaluator, playerView(none, 0))).toBeNull();
  expect(turnObjection(SMALL_PLAY, helps, { kind: 'exchange-joker', owner: 0, face: faceIndex('red') })).toBe(
    'not-held',
  );
});

test('P8 a caller that completes a hand comes before one that is next in turn', () => {
  const next = holdingOf('south joker*2 east*2 west north*2 bam-1*2 bam-9*3');
  const last = holdingOf('east*2 joker*2 south*2 west*3 north*2 bam-1*2');
  const offer = offerOf(0, 'south', { 1: next, 3: last });
  expect(callOf(offer, 1)).toBe(3);
  expect(callOf(offer, 3)).toBe('completes');
  expect(players('order').answerDiscard(offer)).toEqual({ kind: 'finish', seat: 3, pattern: 0 });
});

test('P8 among callers of groups the next in turn to the right comes first', () => {
  const one = holdingOf('east joker*2 south*3 west*2 north*2 bam-1*2 bam-9');
  const two = holdingOf('east joker*2 west*2 north*2 bam-1*2 red*2 green*2');
  const offer = offerOf(3, 'east', { 0: one, 2: two });
  expect([callOf(offer, 0), callOf(offer, 2)]).toEqual([3, 3]);
  expect(players('turn').answerDiscard(offer)).toMatchObject({ kind: 'expose', seat: 0 });
  expect(offerObjection(SMALL_PLAY, offer, { kind: 'expose', seat: 3, size: 3 })).toBe('not-a-caller');
});

test('P9 when the wall is empty and the last discard is not called, nobody wins', () => {
  const offer = offerOf(0, 'bam-9', {});
  const last = { ...offer, drawn: offer.wall.length };
  expect(players('wall').answerDiscard(last)).toEqual({ kind: 'no-call' });
  expect(afterOffer(last, { kind: 'no-call' })).toMatchObject({ phase: 'over', winner: null, pattern: null });
});

test('P9 the last discard can still complete a hand', () => {
  const offer = offerOf(0, 'south', { 2: holdingOf(READY.south) });
  const last = { ...offer, drawn: offer.wall.length };
  const over = afterOffer(last, players('last discard').answerDiscard(last));
  expect(over).toMatchObject({ phase: 'over', winner: 2, pattern: 0 });
  expect(SEATS.map((seat) => sizeOf(over.holdings[seat].concealed))).toEqual([13, 13, 14, 13]);
});
