// Everything that somebody practices alone, and the rounds of the past; fetched when it is first opened.
export { DayNote, DayScreen } from '../practice/day/day-screen.tsx';
export { ExercisesScreen } from '../practice/exercises/exercises-screen.tsx';
export { HabitsScreen } from '../practice/habits/habits-screen.tsx';
export { HistoryScreen } from '../practice/history/history-screen.tsx';
export { PastRoundScreen } from '../practice/history/past-round-screen.tsx';
export { RacksScreen } from '../practice/racks/racks-screen.tsx';
export { startDeepAnalysis } from '../workers/deep-analysis.ts';
export { openDealDrawer } from '../workers/drawn-deals.ts';
export { chosenCard } from './chosen-card.ts';
export { cardOfTable } from './kept-rooms.ts';
export { LessonPage } from './lesson-page.tsx';
export { dayRoom, pastRoom } from './open-room.ts';
export { RoomScreen } from './room-screen.tsx';
