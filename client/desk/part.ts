// Everything of a class on the page, fetched when somebody leads or joins one.
import '../styles/tiles.css';
import '../styles/desk.css';
import '../styles/prepare.css';
import '../styles/spread.css';
import '../styles/wall.css';
import '../styles/print.css';

export { ClassScreen } from './class-screen.tsx';
export { PrepareScreen } from './prepare-screen.tsx';
export { isClass } from './requests.ts';
