// The player's own arrangement: it follows what the server says and keeps every place it can.
import { describe, expect, it } from 'vitest';
import {
  emptyLayout,
  facesInTray,
  withView,
  type RackLayout,
  moveBefore,
  addToTray,
  setBlind,
  inDisplayOrder,
  sortBy,
  removeFromTray,
} from '../../client/room/rack-layout.ts';
import { readLayout, writeLayout } from '../../client/room/rack-layout-storage.ts';
import { bagOf, type Face, type SeatView, seatView, sortFaces, stream } from '../../shared-engine/index.ts';
import { apply, opened, type Played, playOn } from '../kit/rounds.ts';
import { memoryStorage } from '../kit/memory-storage.ts';

const random = stream('hand', 'choices');

function fresh(): Played {
  return opened('hand');
}

/** One step further. */
function onward(played: Played): Played {
  const before = played.round.resolved.length;
  return playOn(played, random, (round) => round.resolved.length > before);
}

function facesOn(hand: RackLayout): Face[] {
  return hand.tiles.map(({ face }) => face);
}

function viewAt({ round }: Played): SeatView {
  return seatView(round, 0);
}

describe('the hand follows the table', () => {
  it('holds exactly the tiles of the view after every step of a round', () => {
    let played = fresh();
    let hand = withView(emptyLayout('suit'), 1, viewAt(played));
    while (played.round.phase !== 'closed') {
      played = onward(played);
      hand = withView(hand, 1, viewAt(played));
      expect(sortFaces(facesOn(hand))).toEqual(viewAt(played).rack);
    }
  });

  it('keeps ids and places of the tiles that stay and marks those that came', () => {
    const before = fresh();
    const hand = withView(emptyLayout('own'), 1, viewAt(before));
    const after = onward(before);
    const next = withView(hand, 1, viewAt(after));
    const stayed = hand.tiles.filter(({ id }) => next.tiles.some((tile) => tile.id === id));
    expect(next.tiles.slice(0, stayed.length).map(({ id }) => id)).toEqual(stayed.map(({ id }) => id));
    const step = viewAt(after).record.steps[0];
    const received = step?.kind === 'move' ? step.received : [];
    expect(sortFaces(next.tiles.filter((tile) => tile.arrived).map(({ face }) => face))).toEqual(received);
  });

  it('C4 shows a sealed pass in the tray and leaves it there when it is taken back', () => {
    const open = fresh();
    const hand = withView(emptyLayout('suit'), 1, viewAt(open));
    const tiles = viewAt(open)
      .rack.filter((face) => face !== 'joker')
      .slice(4, 7);
    const sealed = apply(open, { kind: 'pass', step: 'first-right', tiles, blind: 0, seat: 0, by: 'player' });
    const shownSealed = withView(hand, 1, viewAt(sealed));
    expect(facesInTray(shownSealed)).toEqual(tiles);
    expect(facesInTray(withView(shownSealed, 1, viewAt(open)))).toEqual(tiles);
  });

  it('empties the tray when the step is over and starts anew with the next round', () => {
    const open = fresh();
    const hand = withView(emptyLayout('suit'), 1, viewAt(open));
    const full = addToTray(addToTray(hand, hand.tiles[0]!.id, 3), hand.tiles[1]!.id, 3);
    expect(withView(full, 1, viewAt(onward(open))).tray).toEqual([]);
    expect(withView(full, 2, viewAt(open)).tray).toEqual([]);
  });
});

describe('the tray', () => {
  const hand = withView(emptyLayout('suit'), 1, viewAt(fresh()));
  const [a, b, c, d] = hand.tiles.map(({ id }) => id) as [number, number, number, number];

  it('C1 takes no more tiles than the pass needs', () => {
    const full = [a, b, c, d].reduce((now, id) => addToTray(now, id, 3), hand);
    expect(full.tray).toEqual([a, b, c]);
  });

  it('B1 makes room when tiles are to be passed on unseen', () => {
    const full = [a, b, c].reduce((now, id) => addToTray(now, id, 3), hand);
    const blind = setBlind(full, 2, 3);
    expect(blind.tray).toEqual([a]);
    expect(addToTray(blind, d, 3).tray).toEqual([a]);
  });

  it('gives a tile back', () => {
    expect(removeFromTray(addToTray(hand, a, 3), a).tray).toEqual([]);
  });
});

describe('the order of the rack', () => {
  const hand = withView(emptyLayout('suit'), 1, viewAt(fresh()));

  it('by number brings like numbers of all suits together', () => {
    const numbers = inDisplayOrder(sortBy(hand, 'number')).flatMap(({ face }) => Number(face.split('-')[1]) || []);
    expect(numbers).toEqual(numbers.toSorted((x, y) => x - y));
  });

  it('becomes the player’s own with the first tile moved, starting from what was on the screen', () => {
    const ids = inDisplayOrder(hand).map(({ id }) => id);
    const moved = moveBefore(hand, ids[5]!, ids[0]!);
    expect(moved.sort).toBe('own');
    expect(inDisplayOrder(moved).map(({ id }) => id)).toEqual([ids[5], ...ids.slice(0, 5), ...ids.slice(6)]);
    expect(bagOf(facesOn(moved))).toEqual(bagOf(facesOn(hand)));
  });

  it('survives a reload together with the tray', () => {
    const tab = memoryStorage();
    const lasting = memoryStorage();
    const moved = moveBefore(hand, hand.tiles[4]!.id, hand.tiles[0]!.id);
    const kept = addToTray(moved, moved.tiles[2]!.id, 3);
    writeLayout(kept, 'ABCD', tab, lasting);
    const back = withView(readLayout('ABCD', tab, lasting), 1, viewAt(fresh()));
    expect(back.sort).toBe('own');
    expect(facesOn(back)).toEqual(facesOn(kept));
    expect(facesInTray(back)).toEqual(facesInTray(kept));
  });

  it('starts by suit where the notes are missing or spoilt', () => {
    const tab = memoryStorage({ 'hand.ABCD': 'nonsense' });
    expect(readLayout('ABCD', tab, memoryStorage({ sort: 'sideways' }))).toEqual(emptyLayout('suit'));
  });
});
