// My cards and their editor, fetched when somebody opens them.
export { CardEditor, CardFromLink, MyCards } from '../cards/entry.ts';
