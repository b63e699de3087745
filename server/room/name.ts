// What counts as a person's name at the table.

const LONGEST = 24;
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** Control, format (the direction marks are among them), private, unassigned and line-breaking characters. */
const FORBIDDEN =
  /[\p{Cc}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}\u061C\u200B\u200E\u200F\u202A-\u202E\u2060-\u2069\uFEFF]/u;

/** At least one letter, digit, sign or picture: a name of marks alone would be invisible. */
const VISIBLE = /[\p{L}\p{N}\p{P}\p{S}]/u;

/** The name in NFC with single spaces, or null when it is empty, too long or would upset the line it stands in. */
export function parseName(text: string): string | null {
  if (FORBIDDEN.test(text)) return null;
  const name = text.normalize('NFC').replace(/\s+/gu, ' ').trim();
  if (!VISIBLE.test(name) || name.length > LONGEST * 8) return null;
  return [...graphemes.segment(name)].length <= LONGEST ? name : null;
}
