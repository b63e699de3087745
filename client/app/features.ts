// What the front page does not need at first, each fetched as one part.
import { later } from './lazy.ts';

export const roomsPart = later(() => import('./rooms.ts'));
export const settingsPart = later(() => import('./settings-sheet.tsx'));
export const deskPart = later(() => import('../class/entry.ts'));
export const helpPart = later(() => import('./help-sheet.tsx'));
