// The pages of clubs that somebody has opened here: which there are, and what each of them told last.
import { z } from 'zod';
import { type ClubPage, clubPageSchema } from '../../shared-engine/index.ts';
import type { TextStorage } from './browser-storage.ts';

const KNOWN = 'clubs';
/** As many as somebody may be in; the one opened longest ago makes room. */
const MOST = 8;

const clubKey = (code: string): string => `club.${code}`;

const knownSchema = z.array(z.strictObject({ code: z.string(), name: z.string() })).readonly();
export type KnownClub = z.infer<typeof knownSchema>[number];

/** The one opened last comes first. */
export function listClubs(storage: TextStorage): readonly KnownClub[] {
  const parsed = knownSchema.safeParse(jsonOf(storage.read(KNOWN)));
  return parsed.success ? parsed.data : [];
}

/** As it was told last; null where it never was. */
export function readClub(storage: TextStorage, code: string): ClubPage | null {
  const parsed = clubPageSchema.safeParse(jsonOf(storage.read(clubKey(code))));
  return parsed.success ? parsed.data : null;
}

export function storeClub(storage: TextStorage, page: ClubPage): void {
  const { code, name } = page;
  const all = [{ code, name }, ...listClubs(storage).filter((one) => one.code !== code)];
  for (const { code: oldest } of all.slice(MOST)) storage.remove(clubKey(oldest));
  storage.write(KNOWN, JSON.stringify(all.slice(0, MOST)));
  storage.write(clubKey(code), JSON.stringify(page));
}

export function forgetClub(storage: TextStorage, code: string): void {
  storage.write(KNOWN, JSON.stringify(listClubs(storage).filter((one) => one.code !== code)));
  storage.remove(clubKey(code));
}

function jsonOf(text: string | null): unknown {
  try {
    return JSON.parse(text ?? 'null');
  } catch {
    return null;
  }
}
