// What the page says about the drills and classes that it keeps for a teacher.
import type { StorageProblem } from '../../storage/history/database.ts';

export const LIBRARY = {
  about:
    'Your drills and the classes you opened, kept in this browser and nowhere else. Save a drill as a file to have it on another device. A drill with your own words at its steps can be shared as a lesson.',
  prepare: 'Prepare a class',
  addFile: 'Add a drill file',
  openLesson: 'Open a lesson',
  opening: 'Looking for your drills…',
  mayVanish:
    'This browser may delete what the page keeps when room gets short. Save what you need as files from time to time.',
  drills: 'Drills',
  noDrills: 'None yet. Each class that you prepare is kept here as you go.',
  classes: 'Classes',
  noClasses: 'None yet. Each class that you open is listed here.',
  noGroup: 'Without a group',
  forGroup: (group: string) => `for ${group}`,
  changed: (day: string) => `changed ${day}`,
  opened: (day: string) => `opened ${day}`,
  run: 'Open a class with it',
  again: 'Run it again',
  copy: 'Copy',
  copyDrill: 'Copy its drill',
  copyOf: (title: string) => `${title.slice(0, 70)} (copy)`,
  save: 'Save as a file',
  remove: 'Remove',
  forget: 'Remove from this list',
  removed: (title: string) => `“${title}” is removed from this device.`,
  undo: 'Undo',
  report: 'Report',
  group: 'Group',
  groupName: 'Which group was it?',
  groupSet: 'Set the group',
} as const;

export const GROUP = {
  open: 'See these classes side by side',
  title: (group: string) => `${group}, over the weeks`,
  about: 'From the reports of the classes that this device keeps.',
  looking: 'Reading the reports…',
  none: 'None of these classes has a report here yet. Open the report of a class once, and it stands here.',
  themes: 'Kinds of mistake',
  themesAbout:
    'Of 100 choices, how many were this kind of mistake. What cost most over all classes comes first.',
  players: 'Players',
  costly: 'Choices with something clearly better, of 100',
  byName: 'Player by player',
  byNameAbout:
    'Wins lost a deal, in 100 games, of players whom the class named. Players of one name in one class are left out.',
  /** One decimal place, where that says something. */
  figure: (value: number) => value.toFixed(1).replace(/\.0$/, ''),
} as const;

export const STORAGE_PROBLEMS: Readonly<Record<StorageProblem, string>> = {
  refused:
    'This browser does not let the page keep drills. A private window often does not. Use drill files instead.',
  'other-tab': 'Another tab has an older version of this page open. Close it, then open this page again.',
  newer: 'A newer version of this page has been here. Reload this page to get it.',
  full: 'This browser has no room left. Save drills as files and remove some.',
};
