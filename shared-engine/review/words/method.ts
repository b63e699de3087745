// How the numbers of a review were made and what they assume, said once.
import { BASIS } from '../basis.ts';

export const METHOD = `Every legal pass was ordered by the tiles it keeps; the first ${BASIS.closely} and the pass played were then each tried with the same ${BASIS.arrivals} arrivals, drawn evenly from the tiles this seat had not seen, although neighbours do not pass evenly; a pass that comes out behind all of those takes its rank from the tiles it keeps; go or stop was tried with simple passes, and the seat across was taken to ask for 0, 1, 2 or 3 equally often; nearness counts tiles to go, softened by how many hands are near, and looks at this rack alone, not at what the gift does for a neighbour.`;

/** Added where a busy server looked less closely than it would have. */
export const LOWERED =
  'Some choices were played on in fewer worlds than usual, because the server had much to do; each says in how many.';
