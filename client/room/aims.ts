// What the player said to aim at before a pass: up to two families of the card, kept for the review.
import type { MoveStep } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';

export const MAX_AIMS = 2;

/** Family ids by `round/step`. */
export type Aims = Readonly<Record<string, readonly string[]>>;

export function aimsAt(aims: Aims, round: number, step: MoveStep): readonly string[] {
  return aims[`${round}/${step}`] ?? [];
}

/** Says or unsays one family; with two said already, a third takes the place of the first. */
export function toggleAim(aims: Aims, round: number, step: MoveStep, family: string): Aims {
  const said = aimsAt(aims, round, step);
  const next = said.includes(family)
    ? said.filter((other) => other !== family)
    : [...said, family].slice(-MAX_AIMS);
  return { ...aims, [`${round}/${step}`]: next };
}

export function writeAims(aims: Aims, key: string, tab: TextStorage): void {
  const lines = Object.entries(aims).map(([step, families]) => `${step} ${families.join(' ')}`);
  tab.write(`aims.${key}`, lines.join('\n'));
}

export function readAims(key: string, tab: TextStorage): Aims {
  const lines = (tab.read(`aims.${key}`) ?? '').split('\n').map((line) => line.split(' ').filter(Boolean));
  return Object.fromEntries(lines.flatMap(([step, ...families]) => (step ? [[step, families]] : [])));
}
