// Keeps the arrangement over a reload: order and tray of one round, the way of sorting for good.
import { type Face, isFace } from '../../shared-engine/index.ts';
import type { Memory } from '../storage/browser-storage.ts';
import { emptyHand, facesInTray, type Hand, SORTS, type Sort } from './rack-layout.ts';

export function writeHand(hand: Hand, code: string, tab: Memory, lasting: Memory): void {
  lasting.write('sort', hand.sort);
  const order = hand.held.map((tile) => tile.face).join(' ');
  const tray = facesInTray(hand).join(' ');
  tab.write(`hand.${code}`, [hand.round, hand.steps, hand.blind, order, tray].join('|'));
}

export function readHand(code: string, tab: Memory, lasting: Memory): Hand {
  const start = emptyHand(readSort(lasting.read('sort')));
  const [round, steps, blind, order, tray] = (tab.read(`hand.${code}`) ?? '').split('|');
  if (tray === undefined) return start;
  const held = faces(order).map((face, index) => ({ id: index + 1, face, fresh: false }));
  const used = new Set<number>();
  for (const face of faces(tray)) {
    const tile = held.find((candidate) => candidate.face === face && !used.has(candidate.id));
    if (tile) used.add(tile.id);
  }
  return {
    ...start,
    round: Number(round) || 0,
    steps: Number(steps) || 0,
    blind: Math.min(3, Math.max(0, Number(blind) || 0)),
    held,
    tray: [...used],
  };
}

function readSort(text: string | null): Sort {
  return SORTS.find((sort) => sort === text) ?? 'suit';
}

function faces(text: string | undefined): Face[] {
  return (text ?? '').split(' ').filter(isFace);
}
