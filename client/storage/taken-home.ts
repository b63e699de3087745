// The deals of classes that were taken home, by the table at which they were played: this device keeps them for good.
import { z } from 'zod';
import {
  type AnswerChoice,
  answerChoiceSchema,
  type TakenHome,
  takenHomeSchema,
} from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

const homeSchema = z.strictObject({
  /** Code of the class, which is asked for what is not here yet. */
  code: z.string(),
  taken: takenHomeSchema.nullable(),
});
export type HomeOnDevice = z.infer<typeof homeSchema>;

const homeKey = (room: string): string => `taken-home.${room}`;

/** Null where nobody of this device has played at this table of a class. */
export function readHome(storage: TextStorage, room: string): HomeOnDevice | null {
  try {
    const parsed = homeSchema.safeParse(JSON.parse(storage.read(homeKey(room)) ?? 'null'));
    return parsed.success ? parsed.data : null;
  } catch {
    return null;
  }
}

/** That this is a table of that class; what is here of its deals stays. */
export function noteHome(storage: TextStorage, room: string, code: string): void {
  if (readHome(storage, room) === null) storage.write(homeKey(room), JSON.stringify({ code, taken: null }));
}

/** False where the browser refuses it; what was here before is here still. */
export function storeHome(storage: TextStorage, taken: TakenHome): boolean {
  return storage.write(homeKey(taken.room), JSON.stringify({ code: taken.code, taken }));
}

export interface HomeDeal {
  readonly taken: TakenHome;
  /** Moves when a deal of an earlier round comes home later. */
  readonly place: number;
  /** By which the page keeps the order of its rack and the like; it stays. */
  readonly key: string;
}

/** The deal of this round with the drill around it; null where it is not here. */
export function homeDeal(storage: TextStorage, room: string, round: number): HomeDeal | null {
  const taken = readHome(storage, room)?.taken ?? null;
  const place = taken?.deals.findIndex((deal) => deal.round === round) ?? -1;
  return taken === null || place < 0 ? null : { taken, place, key: `${room}.${round}` };
}

/** Of the table of a class at which the deal was played, the round. */
export interface HomePlace {
  readonly room: string;
  readonly round: number;
}

const answersSchema = z.array(answerChoiceSchema).max(20).readonly();

const answersKey = ({ room, round }: HomePlace): string => `home-answers.${room}.${round}`;

/** What was chosen so far where the deal is played again in this tab; nothing where it begins. */
export function readHomeAnswers(tab: TextStorage, place: HomePlace): readonly AnswerChoice[] {
  try {
    const parsed = answersSchema.safeParse(JSON.parse(tab.read(answersKey(place)) ?? '[]'));
    return parsed.success ? parsed.data : [];
  } catch {
    return [];
  }
}

/** Null once the deal is over: played again it begins anew. */
export function noteHomeAnswers(
  tab: TextStorage,
  place: HomePlace,
  answers: readonly AnswerChoice[] | null,
): void {
  if (answers === null) tab.remove(answersKey(place));
  else tab.write(answersKey(place), JSON.stringify(answers));
}
