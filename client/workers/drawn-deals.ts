// Deals drawn for a kind of mistake in a worker, one ahead of need: ready when the last one is answered.
import type { CompiledCard, DealWish, DrawnDeal } from '../../shared-engine/index.ts';
import type { DrawAnswer, DrawRequest } from './deep-analysis-worker.ts';

export interface DealDrawer {
  /** The next deal, in the order in which they are drawn; null where the worker has failed. */
  next(): Promise<DrawnDeal | null>;
  stop(): void;
}

export interface DrawerRequest {
  readonly card: CompiledCard;
  readonly wish: DealWish;
  readonly seed: string;
  /** So many deals are drawn at most. */
  readonly most: number;
  /** How many deals have been looked at for the next one. */
  readonly onTried: (tried: number) => void;
}

export type OpenDealDrawer = typeof openDealDrawer;

/** Begins at once, and goes on as soon as a deal is taken. */
export function openDealDrawer({ card, wish, seed, most, onTried }: DrawerRequest): DealDrawer {
  const worker = new Worker(new URL('./deep-analysis-worker.ts', import.meta.url), { type: 'module' });
  let asked = 0;
  let ready: DrawnDeal | null = null;
  let isDrawing = false;
  let isOver = false;
  let waiting: ((deal: DrawnDeal | null) => void) | null = null;

  function draw(): void {
    if (isDrawing || ready !== null || isOver || asked >= most) return;
    isDrawing = true;
    asked++;
    const request: DrawRequest = { draw: wish, seed: `${seed} ${asked}`, card: asked === 1 ? card : null };
    worker.postMessage(request);
  }

  function hand(): void {
    if (waiting === null || (ready === null && !isOver)) return;
    const [give, deal] = [waiting, ready];
    waiting = null;
    ready = null;
    give(deal);
    draw();
  }

  function end(): void {
    isOver = true;
    worker.terminate();
    hand();
  }

  worker.onmessage = ({ data }: MessageEvent<DrawAnswer>) => {
    if ('tried' in data) return onTried(data.tried);
    isDrawing = false;
    ready = data.drawn;
    hand();
  };
  worker.onerror = (event) => {
    console.warn(event.message);
    end();
  };
  draw();
  return {
    next() {
      return new Promise((resolve) => {
        waiting = resolve;
        hand();
      });
    },
    stop: end,
  };
}
