// A round of a server's table that went on in the page, stored until its player is back at that table (rules G1–G4).
import * as z from 'zod';
import { type Four, four, type Step, stepSchema } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';
import { jsonOf, type PageRound, pageRoundSchema } from './page-round.ts';

export interface WentOn {
  /** Of the table. */
  readonly code: string;
  /** Of whoever sits there. */
  readonly names: Four<string>;
  /** Number of the server's round that was left. */
  readonly left: number;
  /** The step that was open then. */
  readonly leftAt: Step;
  /** That round as it goes on, or a deal that was dealt here after it. */
  readonly round: PageRound;
}

const KEY = 'went-on';
const FINISHED_KEY = 'finished-here';

/** Tables lie where their players left them for long, so more than the latest is remembered. */
const MAX_FINISHED = 20;

const wentOnSchema: z.ZodType<WentOn> = z.strictObject({
  code: z.string(),
  names: four(z.string()),
  left: z.int().min(1),
  leftAt: stepSchema,
  round: pageRoundSchema,
});

/** One at a time: that of the table last left. */
export function storeWentOn(storage: TextStorage, wentOn: WentOn): void {
  storage.write(KEY, JSON.stringify(wentOn));
}

/** Null unless a round of this table went on here. */
export function readWentOn(storage: TextStorage, code: string): WentOn | null {
  const parsed = wentOnSchema.safeParse(jsonOf(storage.read(KEY)));
  return parsed.success && parsed.data.code === code ? parsed.data : null;
}

export function forgetWentOn(storage: TextStorage, code: string): void {
  if (readWentOn(storage, code) !== null) storage.remove(KEY);
}

/** Notes that this round of a server's table was finished here, so that it is stored once. */
export function noteFinishedHere(storage: TextStorage, code: string, round: number): void {
  const own = `${code}/${round}`;
  const others = finishedHere(storage).filter((known) => known !== own);
  storage.write(FINISHED_KEY, [own, ...others].slice(0, MAX_FINISHED).join('\n'));
}

export function wasFinishedHere(storage: TextStorage, code: string, round: number): boolean {
  return finishedHere(storage).includes(`${code}/${round}`);
}

/** The latest first. */
function finishedHere(storage: TextStorage): readonly string[] {
  return (storage.read(FINISHED_KEY) ?? '').split('\n').filter(Boolean);
}
