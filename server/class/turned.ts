// The bots of a drill as they sit at a table of the class, where every pupil's deal is turned to seat 0.
import { botsAround, type Drill, type Four, type StyleName } from '../../shared-engine/index.ts';

/** The bots at every table of the class; a pupil at one of these seats takes the bot's place. */
export function botsOf({ bots }: Drill): Four<StyleName | null> {
  return botsAround(0, bots);
}
