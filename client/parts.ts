// What the front page does not need at first, each fetched as one part.
import { later } from './model/later.ts';

export const roomsPart = later(() => import('./rooms.ts'));
export const settingsPart = later(() => import('./views/settings-sheet.tsx'));
export const deskPart = later(() => import('./desk/part.ts'));
export const helpPart = later(() => import('./views/help-sheet.tsx'));
