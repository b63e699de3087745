// Stores the layout of the rack: order and tray for this tab, the way of sorting for good.
import { type Face, isFace } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';
import { emptyLayout, facesInTray, type RackLayout, SORTS, type Sort } from './rack-layout.ts';

export function writeLayout(layout: RackLayout, key: string, tab: TextStorage, lasting: TextStorage): void {
  lasting.write('sort', layout.sort);
  const order = layout.tiles.map((tile) => tile.face).join(' ');
  const tray = facesInTray(layout).join(' ');
  tab.write(`rack.${key}`, [layout.round, layout.steps, layout.blind, order, tray].join('|'));
}

export function readLayout(key: string, tab: TextStorage, lasting: TextStorage): RackLayout {
  const start = emptyLayout(readSort(lasting.read('sort')));
  const [round, steps, blind, order, tray] = (tab.read(`rack.${key}`) ?? '').split('|');
  if (tray === undefined) return start;
  const tiles = faces(order).map((face, index) => ({ id: index + 1, face, arrived: false }));
  const used = new Set<number>();
  for (const face of faces(tray)) {
    const tile = tiles.find((candidate) => candidate.face === face && !used.has(candidate.id));
    if (tile) used.add(tile.id);
  }
  return {
    ...start,
    round: Number(round) || 0,
    steps: Number(steps) || 0,
    blind: Math.min(3, Math.max(0, Number(blind) || 0)),
    tiles,
    tray: [...used],
  };
}

function readSort(text: string | null): Sort {
  return SORTS.find((sort) => sort === text) ?? 'suit';
}

function faces(text: string | undefined): Face[] {
  return (text ?? '').split(' ').filter(isFace);
}
