// What the player aims at before a pass: up to two sections of the card, stored for the review.
import type { MoveStep } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';

export const MAX_AIMS = 2;

/** Section ids by `round/step`. */
export type Aims = Readonly<Record<string, readonly string[]>>;

export function aimsAt(aims: Aims, round: number, step: MoveStep): readonly string[] {
  return aims[`${round}/${step}`] ?? [];
}

/** Adds or removes one section; a third beside two is not taken, and the aims stay the same object. */
export function toggleAim(aims: Aims, round: number, step: MoveStep, section: string): Aims {
  const chosen = aimsAt(aims, round, step);
  if (!chosen.includes(section) && chosen.length >= MAX_AIMS) return aims;
  const next = chosen.includes(section) ? chosen.filter((other) => other !== section) : [...chosen, section];
  return { ...aims, [`${round}/${step}`]: next };
}

export function writeAims(aims: Aims, key: string, tab: TextStorage): void {
  const lines = Object.entries(aims).map(([step, sections]) => `${step} ${sections.join(' ')}`);
  tab.write(`aims.${key}`, lines.join('\n'));
}

export function readAims(key: string, tab: TextStorage): Aims {
  const lines = (tab.read(`aims.${key}`) ?? '').split('\n').map((line) => line.split(' ').filter(Boolean));
  return Object.fromEntries(lines.flatMap(([step, ...sections]) => (step ? [[step, sections]] : [])));
}
