// How the numbers of a review were made and what they assume, said once.
import { BASIS } from '../basis.ts';

export const DEEP_METHOD =
  'Judged more deeply, every alternative is played on to the close in the same worlds, drawn from what this seat knew: the tiles it held, gave and received and how other seats choose what to give; votes, numbers asked and blind passing of others are not used as evidence; every seat, this one too, goes on as a plain player with its own tiles in sight; outlook is the chance in a hundred to complete a line first in the simulated play that follows; alternatives are thinned out in worlds of their own, and every number shown comes from fresh ones; intervals hold in 95 of 100 choices, verdicts are stricter.';

export const METHOD = `Every legal pass was ordered by the tiles it keeps; the first ${BASIS.closely} and the pass played were then each tried with the same ${BASIS.arrivals} arrivals, drawn evenly from the tiles this seat had not seen, although neighbours do not pass evenly; a pass that comes out behind all of those takes its rank from the tiles it keeps; go or stop was tried with simple passes, and the seat across was taken to ask for 0, 1, 2 or 3 equally often; nearness counts tiles to go, softened by how many hands are near, and looks at this rack alone, not at what the gift does for a neighbour.`;

/** Added where a busy server looked less closely than it would have. */
export const LOWERED =
  'Some choices were played on in fewer worlds than usual, because the server had much to do; each says in how many.';
