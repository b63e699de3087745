// What the player aims at before a pass: up to two sections of the card, stored for the review.
import { type MoveStep, STEPS, type Step } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';

export const MAX_AIMS = 2;

/** Section ids by `round/step`, where they were chosen or taken back. */
export type Aims = Readonly<Record<string, readonly string[]>>;

/** An aim stays from pass to pass of a round until it is changed. */
export function aimsAt(aims: Aims, round: number, step: MoveStep): readonly string[] {
  const upTo = STEPS.slice(0, STEPS.indexOf(step) + 1);
  const changed = upTo.findLast((earlier) => aims[`${round}/${earlier}`] !== undefined);
  return aims[`${round}/${changed ?? step}`] ?? [];
}

/** Of a round that is stored with what was said before each pass: where nothing was, nothing stood. */
export function aimsOfRound(round: number, said: Readonly<Partial<Record<Step, readonly string[]>>>): Aims {
  return Object.fromEntries(STEPS.map((step) => [`${round}/${step}`, said[step] ?? []]));
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
