// What the settings say.
import type { Settings } from '../storage/settings.ts';

export const SETTINGS = {
  title: 'Settings',
  about: 'Kept in this browser alone.',
  reading: 'Reading',
  textSize: 'Size of the text',
  tiles: 'Tiles',
  indexMarks: 'A number or letter in the corner of each tile',
  indexAbout: 'Takes the guessing out of bams and dots with many signs.',
  sort: 'The rack is put in order',
  sorts: { suit: 'by suit', number: 'by number' } satisfies Record<Settings['sort'], string>,
  calm: 'Motion and sound',
  still: 'Keep everything still',
  stillAbout: 'Nothing moves then, even where this device would allow it.',
  sound: 'Sounds',
  soundAbout: 'A tap for a tile in the tray, a clack for tiles that arrive, a chime when it is your choice.',
  hear: 'Hear them',
  tables: 'Tables you open',
} as const;

export function percent(size: number): string {
  return `${size} %`;
}
