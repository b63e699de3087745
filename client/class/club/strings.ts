// What the page of a club says: to whoever has its link, and to its teacher.
import { CLUB_LIMITS } from '../../../shared-engine/index.ts';
import { dayText, dealCount } from '../model/strings.ts';

export const CLUB = {
  opening: 'Opening the club’s page…',
  gone: 'There is no club page at this link.',
  goneAbout: 'Check the link with your club.',
  toldLast: 'No connection. This is what stood here last; it may have changed.',
  drill: 'This month’s drill',
  drillAbout: 'Play it alone, whenever you like, until its last day.',
  drillOpen: (deals: number, until: number) => `${dealCount(deals)}, open until ${dayText(until - 1)}`,
  noDrill: 'No drill stands here just now.',
  drillOver: (title: string) => `“${title}” is over; the next one will stand here.`,
  tables: 'Open tables',
  noTables: 'No table is open just now.',
  free: (count: number) => (count === 1 ? '1 free seat' : `${count} free seats`),
  table: (count: number, card: string) => `${CLUB.free(count)}, ${card}`,
  joinTable: (code: string) => `Look in and sit down at table ${code}`,
  open: 'Open a table with friends, then choose “Show on a club’s page” there.',
  toFront: 'To the front page',
} as const;

export const CLUB_TEACHER = {
  title: 'For you alone',
  about: 'You can change this page. Whoever has its link reads it; it is listed nowhere.',
  link: 'Link of this page',
  linkCopied: 'Copied.',
  name: 'Name of the club',
  setName: 'Set the name',
  drill: 'The drill that stands here',
  none: 'None',
  other: 'Code or link of a drill that was published elsewhere',
  setDrill: 'Show this drill',
  takeOff: (code: string) => `Take table ${code} off this page`,
  standing: {
    open: 'It has a free seat.',
    full: 'It has no free seat, so it is not shown.',
    unattended: 'Nobody is at it just now, so it is not shown.',
  },
  letBack: (code: string) => `Let table ${code} back`,
  keptOff: 'You took it off, and its host cannot put it back.',
  keys: 'Other computers',
  keysAbout: 'A key opens this page at another computer. Whoever has it can do all that you can.',
  remove: 'Delete this page',
  removeYes: 'Yes, delete the page',
  removeNot: 'No',
  removeAbout: 'Its link leads nowhere any more. Tables and drills stay as they are.',
  kept: (days: number) => `The server deletes this page ${days} days after its last change.`,
} as const;

export const CLUB_LIST = {
  title: 'Club pages',
  about: 'One lasting link for your club, with this month’s drill and the tables that somebody can join.',
  name: 'What is your club called?',
  missing: `Type a name of 1 to ${CLUB_LIMITS.letters} letters.`,
  make: 'Make a club’s page',
} as const;
