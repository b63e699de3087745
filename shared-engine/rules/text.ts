// What a text that people type may hold: what can be seen, and nothing that hides in it or turns its direction around.

/** Pictures of several parts: a joiner between two of them, the sign that asks for color, and the keycaps. */
const PICTURES =
  /\p{Extended_Pictographic}[\uFE0E\uFE0F]?\p{Emoji_Modifier}?(?:\u200D\p{Extended_Pictographic}\uFE0F?\p{Emoji_Modifier}?)*|[0-9#*]\uFE0F\u20E3/gu;
/** The flags of countries within a country: a black flag, letters that cannot be seen, an end. */
const FLAGS = /\u{1F3F4}[\u{E0061}-\u{E007A}]{5}\u{E007F}/gu;
/** Scripts in which a joiner or its opposite between two letters changes how these are written. */
const JOINED =
  /(?<=[\p{scx=Arab}\p{scx=Deva}\p{scx=Beng}\p{scx=Gujr}\p{scx=Guru}\p{scx=Knda}\p{scx=Mlym}\p{scx=Orya}\p{scx=Sinh}\p{scx=Taml}\p{scx=Telu}])[\u200C\u200D](?=[\p{L}\p{M}])/gu;

/** Control, format (direction marks are among them), private, unassigned and other characters that show nothing. */
const HIDDEN =
  /[\p{Cc}\p{Cf}\p{Co}\p{Cn}\p{Cs}\p{Zl}\p{Zp}\p{Default_Ignorable_Code_Point}\u2800\u{1D159}\uFFFC]/u;

/** Whether nothing in this line is invisible or turns around how the rest is read. */
export function isVisibleText(line: string): boolean {
  const rest = line.replace(FLAGS, '').replace(PICTURES, '').replace(JOINED, '');
  return !HIDDEN.test(rest);
}

/** At least one letter, digit, sign or picture: a name of marks alone would be invisible. */
const SHOWN = /[\p{L}\p{N}\p{P}\p{S}]/u;

/** Whether a person can be called so; how long a name may be is counted elsewhere, as people count. */
export function isVisibleName(text: string): boolean {
  return isVisibleText(text) && SHOWN.test(text.normalize('NFC'));
}

/** The same for a text that may have several lines. */
export function areVisibleLines(text: string): boolean {
  return isVisibleText(text.replace(/\r?\n|\t/g, ' '));
}
