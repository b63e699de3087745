// A published drill on this device: what it needs to be played without a network, and the rounds that wait to be sent.
import * as z from 'zod';
import {
  answerChoiceSchema,
  type PublishedDrill,
  publishedDrillSchema,
  type ReleasedDeal,
  releasedSchema,
  type SendRound,
  sendRoundSchema,
} from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

/**
 * The round of a deal that may count. It is `playing` until the deal is over and `waiting` until the server has it, which
 * counts it, counts another one of this device, or rejects it. `code` and `message` are what the server objected to last.
 */
export interface PlayedRound extends Pick<SendRound, 'id' | 'questions'> {
  readonly answers: SendRound['choices'];
  readonly state: 'playing' | 'waiting' | 'counted' | 'practice' | 'rejected';
  readonly code: string | null;
  readonly message: string | null;
}

export interface DrillOnDevice {
  readonly drill: PublishedDrill;
  /** By the id of the deal. */
  readonly rounds: Readonly<Record<string, PlayedRound>>;
  /** What was told of others when the server was last asked. */
  readonly released: readonly ReleasedDeal[];
}

const roundSchema = z.strictObject({
  id: z.string(),
  answers: z.array(answerChoiceSchema).readonly(),
  questions: sendRoundSchema.shape.questions,
  state: z.enum(['playing', 'waiting', 'counted', 'practice', 'rejected']),
  code: z.string().nullable().default(null),
  message: z.string().nullable(),
});
const deviceSchema = z.strictObject({
  drill: publishedDrillSchema,
  rounds: z.record(z.string(), roundSchema),
  released: releasedSchema.shape.deals,
});

const MINE = 'published.mine';

/** Null where this device has nothing of it, or of another edition. */
export function readDrillOnDevice(storage: TextStorage, code: string): DrillOnDevice | null {
  const parsed = deviceSchema.safeParse(jsonOf(storage.read(drillKey(code))));
  return parsed.success ? parsed.data : null;
}

/** False where the browser stores nothing of it. */
export function storeDrillOnDevice(storage: TextStorage, device: DrillOnDevice): boolean {
  return storage.write(drillKey(device.drill.code), JSON.stringify(device));
}

/** A drill as one tab knows it, and whether that is what was stored last. */
export interface DrillInTab {
  readonly code: string;
  readonly device: DrillOnDevice | null;
  readonly isStored: boolean;
  /** Whether somebody has deleted what was stored: this tab then goes on by itself and stores nothing again. */
  readonly isDeleted: boolean;
}

/** Changes what is stored by now, for another tab of this drill may have changed it; null changes nothing. */
export function changeDrill(
  storage: TextStorage,
  tab: DrillInTab,
  change: (now: DrillOnDevice | null) => DrillOnDevice | null,
): DrillInTab {
  const stored = tab.isStored ? readDrillOnDevice(storage, tab.code) : null;
  const isDeleted = tab.isDeleted || (tab.isStored && tab.device !== null && stored === null);
  const device = change(stored ?? tab.device);
  if (device === null) return { ...tab, isDeleted };
  return { ...tab, device, isDeleted, isStored: !isDeleted && storeDrillOnDevice(storage, device) };
}

/** A drill that was published in this browser, for its teacher. */
export interface OwnPublished {
  readonly code: string;
  readonly title: string;
}

const mineSchema = z.array(z.strictObject({ code: z.string(), title: z.string() })).readonly();

export function listPublished(storage: TextStorage): readonly OwnPublished[] {
  const parsed = mineSchema.safeParse(jsonOf(storage.read(MINE)));
  return parsed.success ? parsed.data : [];
}

/** The newest first. */
export function notePublished(storage: TextStorage, own: OwnPublished): void {
  const others = listPublished(storage).filter(({ code }) => code !== own.code);
  storage.write(MINE, JSON.stringify([own, ...others]));
}

export function drillKey(code: string): string {
  return `published.${code}`;
}

function jsonOf(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}
