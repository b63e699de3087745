// What the settings say.
import type { Settings } from '../storage/settings.ts';

export const SETTINGS = {
  title: 'Settings',
  about: 'Saved in this browser only.',
  reading: 'Reading',
  textSize: 'Size of the text',
  tiles: 'Tiles',
  indexMarks: 'A number or letter in the corner of each tile',
  indexAbout: 'Helps with bams and dots that have many signs.',
  sort: 'Sort the rack',
  sorts: { suit: 'by suit', number: 'by number' } satisfies Record<Settings['sort'], string>,
  motionAndSound: 'Motion and sound',
  reduceMotion: 'No motion',
  reduceMotionAbout: 'Nothing on the page moves.',
  sound: 'Sounds',
  soundAbout: 'A tap for a tile in the tray, a clack when tiles arrive, a chime when it is your choice.',
  hear: 'Play the sounds',
  notices: 'Notices',
  noticesAbout: 'When you are in another window, your device tells you that it is your choice.',
  noticesForbidden: 'This browser does not let the page do that. Allow notices for this site first.',
  tables: 'Tables you open',
} as const;

export function percent(size: number): string {
  return `${size}%`;
}
