// What the player has told this browser once: a name, how tables shall be, how the page shall look and sound.
import { STYLES, type StyleName } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

export const DEADLINES = [null, 30, 60, 120] as const;
/** Per cent of the page's own size. */
export const TEXT_SIZES = [100, 125, 150, 175, 200] as const;
export const FIRST_SORTS = ['suit', 'number'] as const;

export interface Settings {
  readonly name: string;
  readonly style: StyleName;
  /** Seconds for each step, or null for as long as one likes. */
  readonly deadline: number | null;
  readonly revealRacks: boolean;
  readonly textSize: (typeof TEXT_SIZES)[number];
  /** Number or letter in the corner of each tile. */
  readonly indexMarks: boolean;
  /** How the rack is put in order until the player sorts it another way. */
  readonly sort: (typeof FIRST_SORTS)[number];
  /** Nothing moves, whatever the device says. */
  readonly reduceMotion: boolean;
  readonly sound: boolean;
}

export function readSettings(memory: TextStorage): Settings {
  const yes = (key: string, otherwise: boolean) => (memory.read(key) ?? (otherwise ? 'yes' : 'no')) === 'yes';
  const style = memory.read('style');
  const deadline = Number(memory.read('deadline'));
  const textSize = Number(memory.read('text-size'));
  const sort = memory.read('first-sort');
  return {
    name: memory.read('name') ?? '',
    style: STYLES.find((known) => known === style) ?? 'typical',
    deadline: DEADLINES.find((known) => known === deadline) ?? null,
    revealRacks: yes('lay-open', false),
    textSize: TEXT_SIZES.find((known) => known === textSize) ?? 100,
    indexMarks: yes('index-marks', true),
    sort: FIRST_SORTS.find((known) => known === sort) ?? 'suit',
    reduceMotion: yes('still', false),
    sound: yes('sound', false),
  };
}

export function writeSettings(memory: TextStorage, settings: Settings): void {
  const word = (wanted: boolean) => (wanted ? 'yes' : 'no');
  memory.write('name', settings.name);
  memory.write('style', settings.style);
  memory.write('deadline', String(settings.deadline ?? ''));
  memory.write('lay-open', word(settings.revealRacks));
  memory.write('text-size', String(settings.textSize));
  memory.write('index-marks', word(settings.indexMarks));
  memory.write('first-sort', settings.sort);
  memory.write('still', word(settings.reduceMotion));
  memory.write('sound', word(settings.sound));
}
