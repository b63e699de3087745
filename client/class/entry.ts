// Everything of a class on the page, fetched when somebody leads or joins one.
import '../tiles/tiles.css';
import './dashboard.css';
import './prepare.css';
import './spread.css';
import './big-screen.css';
import './print.css';

export { ClassScreen } from './class-screen.tsx';
export { PrepareScreen } from './prepare-screen.tsx';
export { isClass } from './requests.ts';
