// The settings that this browser remembers: a name, how tables are set up, how the page looks and sounds.
import { type Mode, STYLES, type StyleName, type Terms } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';
import { readWays } from './ways.ts';

/** Percent of the page's own size. */
export const TEXT_SIZES = [100, 125, 150, 175, 200] as const;
export const FIRST_SORTS = ['suit', 'number'] as const;

export type OwnTable = Exclude<Mode, 'class'>;

export interface Settings {
  readonly name: string;
  readonly style: StyleName;
  /** How tables play that are opened here, alone with bots and with friends. */
  readonly ways: Readonly<Record<OwnTable, Terms>>;
  readonly textSize: (typeof TEXT_SIZES)[number];
  /** Number or letter in the corner of each tile. */
  readonly indexMarks: boolean;
  /** How the rack is sorted until the player sorts it another way. */
  readonly sort: (typeof FIRST_SORTS)[number];
  /** Nothing moves, even where the device allows it. */
  readonly reduceMotion: boolean;
  readonly sound: boolean;
  /** Whether the system tells the player in another window that the table waits. */
  readonly notices: boolean;
  /** Key of the card of one's own that new tables play with; null for the house card. */
  readonly card: string | null;
}

export function readSettings(storage: TextStorage): Settings {
  const yes = (key: string, otherwise: boolean) =>
    (storage.read(key) ?? (otherwise ? 'yes' : 'no')) === 'yes';
  const style = storage.read('style');
  const textSize = Number(storage.read('text-size'));
  const sort = storage.read('first-sort');
  return {
    name: storage.read('name') ?? '',
    style: STYLES.find((known) => known === style) ?? 'typical',
    ways: {
      alone: readWays(storage.read('ways-alone'), 'alone'),
      friends: readWays(storage.read('ways-friends'), 'friends'),
    },
    textSize: TEXT_SIZES.find((known) => known === textSize) ?? 100,
    indexMarks: yes('index-marks', true),
    sort: FIRST_SORTS.find((known) => known === sort) ?? 'suit',
    reduceMotion: yes('reduce-motion', false),
    sound: yes('sound', false),
    notices: yes('notices', false),
    card: storage.read('chosen-card') || null,
  };
}

export function writeSettings(storage: TextStorage, settings: Settings): void {
  const word = (wanted: boolean) => (wanted ? 'yes' : 'no');
  storage.write('name', settings.name);
  storage.write('style', settings.style);
  storage.write('ways-alone', JSON.stringify(settings.ways.alone));
  storage.write('ways-friends', JSON.stringify(settings.ways.friends));
  storage.write('text-size', String(settings.textSize));
  storage.write('index-marks', word(settings.indexMarks));
  storage.write('first-sort', settings.sort);
  storage.write('reduce-motion', word(settings.reduceMotion));
  storage.write('sound', word(settings.sound));
  storage.write('notices', word(settings.notices));
  storage.write('chosen-card', settings.card ?? '');
}
