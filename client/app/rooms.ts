// Everything a table needs, fetched after the front page stands: its screens, its connection, its styles.
export { openRoom, openSameDeal } from '../connection/api.ts';
export { LessonGuide } from '../lessons/lesson-guide.tsx';
export { DealCardNote } from './deal-card-note.tsx';
export { lessonRoom, pageRoom, serverRoom } from './open-room.ts';
export { RoomScreen } from './room-screen.tsx';
