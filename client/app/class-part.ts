// Everything of a class on the page, with the tables of its players; fetched when somebody leads or joins a class.
export {
  ClassScreen,
  ClubScreen,
  classExists,
  clubExists,
  DrillScreen,
  drillExists,
  GroupScreen,
  HomeDealScreen,
  LibraryScreen,
  PrepareScreen,
} from '../class/entry.ts';
export { serverRoom } from './open-room.ts';
export { publishedRoom } from './published-room.ts';
export { RoomScreen } from './room-screen.tsx';
