// Everything of a class on the page, fetched when somebody leads or joins one.
import '../tiles/tiles.css';
import './class.css';
import './lead/lead.css';
import './player/player.css';
import './library/library.css';
import './prepare/prepare.css';
import './results/spread.css';
import './results/big-screen.css';
import './results/report.css';
import './published/published.css';
import './club/club.css';

export { ClassScreen } from './class-screen.tsx';
export { ClubScreen } from './club/club-screen.tsx';
export { clubExists } from './club/requests.ts';
export { GroupScreen } from './library/group-screen.tsx';
export { LibraryScreen } from './library/library-screen.tsx';
export { classExists } from './model/requests.ts';
export { HomeDealScreen } from './player/home-deal-screen.tsx';
export { PrepareScreen } from './prepare/prepare-screen.tsx';
export { DrillScreen } from './published/drill-screen.tsx';
export { drillExists } from './published/requests.ts';
