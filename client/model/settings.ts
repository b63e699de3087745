// What the player has told this browser once: a name and how the tables they open shall be.
import { STYLES, type StyleName } from '../../shared-engine/index.ts';
import type { Memory } from '../connection/pending.ts';

export const DEADLINES = [null, 30, 60, 120] as const;

export interface Settings {
  readonly name: string;
  readonly style: StyleName;
  /** Seconds for each step, or null for as long as one likes. */
  readonly deadline: number | null;
  readonly layOpen: boolean;
}

export function readSettings(memory: Memory): Settings {
  const style = memory.read('style');
  const deadline = Number(memory.read('deadline'));
  return {
    name: memory.read('name') ?? '',
    style: STYLES.find((known) => known === style) ?? 'typical',
    deadline: DEADLINES.find((known) => known === deadline) ?? null,
    layOpen: memory.read('lay-open') === 'yes',
  };
}

export function writeSettings(memory: Memory, settings: Settings): void {
  memory.write('name', settings.name);
  memory.write('style', settings.style);
  memory.write('deadline', String(settings.deadline ?? ''));
  memory.write('lay-open', settings.layOpen ? 'yes' : 'no');
}
