// How the numbers of a review were made and what they assume.
import { BASIS } from '../basis.ts';

export const METHOD = [
  'How our first answer is made:',
  'every legal pass was ordered by the tiles it keeps;',
  `the first ${BASIS.passesTried} and yours were each tried with the same ${BASIS.arrivals} arrivals,`,
  'drawn evenly from the tiles you had not seen, although players do not pass evenly;',
  'a pass that comes out behind all of those is ranked by the tiles it keeps;',
  'continuing or stopping was tried with simple passes,',
  'and the player across was taken to ask for 0, 1, 2 or 3 equally often;',
  'how close a rack is counts its tiles to go, softened by how many hands are near,',
  'and looks at this rack alone, not at what the pass did for your neighbor.',
].join(' ');

export const DEEP_METHOD = [
  'When we play a choice on, every alternative is played to the end with the same sampled deals:',
  'racks the others could have, given the tiles you held, passed and received and how players choose what to pass;',
  'votes, courtesy numbers and blind passes of others are not used as evidence.',
  'From there all four, you too, pass simply, each seeing its own tiles alone.',
  'Wins in 100 games are your chance to complete a hand first in the simulated play that follows,',
  'from all four racks together, so that what a pass gave away is part of what it cost.',
  'Every legal choice is looked at; the best are searched on deals of their own, and all that is told comes from fresh ones;',
  'intervals hold in 95 of 100 choices, and verdicts are stricter.',
].join(' ');

/** Added where a busy server looked less closely than it would have. */
export const REDUCED_BUDGET =
  'Some choices were played on fewer times than usual, because the server was busy; each says how often.';
