// How the player lays out the rack: the layout follows the server and keeps every place it can.
import { describe, expect, it } from 'vitest';
import {
  addToTray,
  emptyLayout,
  facesInTray,
  inDisplayOrder,
  moveBefore,
  type RackLayout,
  removeFromTray,
  setBlind,
  sortBy,
  withView,
} from '../../client/room/rack-layout.ts';
import { readLayout, writeLayout } from '../../client/room/rack-layout-storage.ts';
import { stream } from '../../shared-engine/rules/deal/random.ts';
import { bagOf, sortFaces } from '../../shared-engine/rules/tiles/bag.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { type SeatView, seatView } from '../../shared-engine/rules/view/view.ts';
import { memoryStorage } from '../kit/memory-storage.ts';
import { apply, opened, type Played, playOn } from '../kit/rounds.ts';

const random = stream('hand', 'choices');

function fresh(): Played {
  return opened('hand');
}

/** One step further. */
function onward(played: Played): Played {
  const before = played.round.resolved.length;
  return playOn(played, random, (round) => round.resolved.length > before);
}

function facesOn(layout: RackLayout): Face[] {
  return layout.tiles.map(({ face }) => face);
}

function viewAt({ round }: Played): SeatView {
  return seatView(round, 0);
}

describe('the layout of the rack', () => {
  it('the layout holds exactly the tiles of the view after every step of a round', () => {
    let played = fresh();
    let layout = withView(emptyLayout('suit'), 1, viewAt(played));
    while (played.round.phase !== 'closed') {
      played = onward(played);
      layout = withView(layout, 1, viewAt(played));
      expect(sortFaces(facesOn(layout))).toEqual(viewAt(played).rack);
    }
  });

  it('tiles that stay keep their ids and places, and tiles that came are marked', () => {
    const before = fresh();
    const layout = withView(emptyLayout('custom'), 1, viewAt(before));
    const after = onward(before);
    const next = withView(layout, 1, viewAt(after));
    const stayed = layout.tiles.filter(({ id }) => next.tiles.some((tile) => tile.id === id));
    expect(next.tiles.slice(0, stayed.length).map(({ id }) => id)).toEqual(stayed.map(({ id }) => id));
    const step = viewAt(after).record.steps[0];
    const received = step?.kind === 'move' ? step.received : [];
    expect(sortFaces(next.tiles.filter((tile) => tile.arrived).map(({ face }) => face))).toEqual(received);
  });

  it('C4 a submitted pass is shown in the tray and stays there when it is withdrawn', () => {
    const open = fresh();
    const layout = withView(emptyLayout('suit'), 1, viewAt(open));
    const tiles = viewAt(open)
      .rack.filter((face) => face !== 'joker')
      .slice(4, 7);
    const submitted = apply(open, {
      kind: 'pass',
      step: 'first-right',
      tiles,
      blind: 0,
      seat: 0,
      by: 'player',
    });
    const shownSubmitted = withView(layout, 1, viewAt(submitted));
    expect(facesInTray(shownSubmitted)).toEqual(tiles);
    expect(facesInTray(withView(shownSubmitted, 1, viewAt(open)))).toEqual(tiles);
  });

  it('the tray is emptied when the step is over and when the next round begins', () => {
    const open = fresh();
    const layout = withView(emptyLayout('suit'), 1, viewAt(open));
    const full = addToTray(addToTray(layout, layout.tiles[0]!.id, 3), layout.tiles[1]!.id, 3);
    expect(withView(full, 1, viewAt(onward(open))).tray).toEqual([]);
    expect(withView(full, 2, viewAt(open)).tray).toEqual([]);
  });
});

describe('the tray', () => {
  const layout = withView(emptyLayout('suit'), 1, viewAt(fresh()));
  const [a, b, c, d] = layout.tiles.map(({ id }) => id) as [number, number, number, number];

  it('C1 the tray takes no more tiles than the pass needs', () => {
    const full = [a, b, c, d].reduce((now, id) => addToTray(now, id, 3), layout);
    expect(full.tray).toEqual([a, b, c]);
  });

  it('B1 the tray makes room when tiles are to be passed blind', () => {
    const full = [a, b, c].reduce((now, id) => addToTray(now, id, 3), layout);
    const blind = setBlind(full, 2, 3);
    expect(blind.tray).toEqual([a]);
    expect(addToTray(blind, d, 3).tray).toEqual([a]);
  });

  it('a tile can be taken back from the tray', () => {
    expect(removeFromTray(addToTray(layout, a, 3), a).tray).toEqual([]);
  });
});

describe('the order of the rack', () => {
  const layout = withView(emptyLayout('suit'), 1, viewAt(fresh()));

  it('sorting by number brings like numbers of all suits together', () => {
    const numbers = inDisplayOrder(sortBy(layout, 'number')).flatMap(
      ({ face }) => Number(face.split('-')[1]) || [],
    );
    expect(numbers).toEqual(numbers.toSorted((x, y) => x - y));
  });

  it('the order becomes the player’s own with the first tile moved, starting from what was on the screen', () => {
    const ids = inDisplayOrder(layout).map(({ id }) => id);
    const moved = moveBefore(layout, ids[5]!, ids[0]!);
    expect(moved.sort).toBe('custom');
    expect(inDisplayOrder(moved).map(({ id }) => id)).toEqual([ids[5], ...ids.slice(0, 5), ...ids.slice(6)]);
    expect(bagOf(facesOn(moved))).toEqual(bagOf(facesOn(layout)));
  });

  it('a reload keeps the player’s own order and the tray', () => {
    const tab = memoryStorage();
    const lasting = memoryStorage();
    const moved = moveBefore(layout, layout.tiles[4]!.id, layout.tiles[0]!.id);
    const arranged = addToTray(moved, moved.tiles[2]!.id, 3);
    writeLayout(arranged, 'ABCD', tab, lasting);
    const back = withView(readLayout('ABCD', tab, lasting), 1, viewAt(fresh()));
    expect(back.sort).toBe('custom');
    expect(facesOn(back)).toEqual(facesOn(arranged));
    expect(facesInTray(back)).toEqual(facesInTray(arranged));
  });

  it('the rack starts sorted by suit where the stored text is missing or damaged', () => {
    const tab = memoryStorage({ 'rack.ABCD': 'nonsense' });
    expect(readLayout('ABCD', tab, memoryStorage({ sort: 'sideways' }))).toEqual(emptyLayout('suit'));
  });
});
