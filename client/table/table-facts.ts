// What the drawing of the table shows of each seat, from public facts alone: tiles on its rack and put out, its last word.
import {
  type Direction,
  type Four,
  forFour,
  isWaitingFor,
  MOVES,
  type PublicStep,
  type Seat,
  type SpectatorView,
} from '../../shared-engine/index.ts';

type PublicStage = SpectatorView['stage'];

export interface SeatTileCounts {
  /** Tiles standing on the rack. */
  readonly rack: number;
  /** Tiles lying face down in front of it until the pass is complete. */
  readonly out: number;
}

/** East holds one tile more; what a seat has submitted lies in front of it while the table waits for others. */
export function tileCountsOf(stage: PublicStage, dealer: Seat, seat: Seat): SeatTileCounts {
  const all = seat === dealer ? 14 : 13;
  const out = isWaitingFor(stage, seat) ? 0 : (askedTilesOf(stage)?.[seat] ?? 0);
  return { rack: all - out, out };
}

/** How many tiles the open pass wants of each seat; null where no pass is open. */
function askedTilesOf(stage: PublicStage): Four<number> | null {
  if (stage.phase === 'passing') return [3, 3, 3, 3];
  return stage.phase === 'giving' ? stage.counts : null;
}

/** What was revealed last, until the next step is over: four votes or four courtesy numbers. */
export function revealedBy(steps: readonly PublicStep[]): Four<boolean> | Four<number> | null {
  const last = steps.at(-1);
  if (last?.kind === 'vote') return last.go;
  return last?.kind === 'ask' ? last.asked : null;
}

/** The tiles that have just changed places. */
export interface TilesMoved {
  readonly toward: Direction;
  /** How many each seat passed. */
  readonly counts: Four<number>;
}

/** Null unless the last step that is over moved tiles. */
export function lastMoved(steps: readonly PublicStep[]): TilesMoved | null {
  const last = steps.at(-1);
  if (last?.kind !== 'move') return null;
  const { toward } = MOVES[last.step];
  if (last.step !== 'courtesy-pass') return { toward, counts: forFour(() => Math.max(0, 3 - last.voided)) };
  const ask = steps.findLast((step) => step.kind === 'ask');
  return ask ? { toward, counts: ask.agreed } : null;
}
