// Reads JSON; of a text that is torn or mistyped it says at which line and column, in the same words on every device.

export type ReadJson =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly line: number; readonly column: number; readonly message: string };

/** Never throws. The message is a sentence with the place, counted from 1, and what should stand there. */
export function readJson(text: string): ReadJson {
  try {
    return { ok: true, value: JSON.parse(text) };
  } catch {
    return { ok: false, ...faultOf(text) };
  }
}

type Wanted = 'value' | 'value or ]' | 'name' | 'name or }' | 'colon' | 'comma or end' | 'nothing' | 'text';

const BLANK = /[ \t\n\r]*/y;
const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/y;
/** Letters before the blank cannot stand in a text as they are. */
const FIRST_LETTER = 0x20;

/** Where the pattern ends that stands at this place; the place itself where it does not stand there. */
function endOf(pattern: RegExp, text: string, at: number): number {
  pattern.lastIndex = at;
  return pattern.test(text) ? pattern.lastIndex : at;
}

/** The place of the quote that closes the text which opens here, or of what cannot stand in it. */
function endOfText(text: string, open: number): number {
  let at = open + 1;
  while (text.charCodeAt(at) >= FIRST_LETTER && text[at] !== '"') {
    const next = text[at] === '\\' ? endOf(ESCAPE, text, at) : at + 1;
    if (next === at) break;
    at = next;
  }
  return at;
}

function faultOf(text: string): { readonly line: number; readonly column: number; readonly message: string } {
  const { at, wanted, open } = firstFault(text);
  const before = text.slice(0, at).split('\n');
  const line = before.length;
  const column = (before.at(-1) ?? '').length + 1;
  const words = wordsFor(wanted, open);
  const message =
    at >= text.length
      ? `It ends in line ${line}, column ${column}, where there should be ${words}.`
      : `In line ${line}, column ${column}, there should be ${words}.`;
  return { line, column, message };
}

interface Fault {
  readonly at: number;
  readonly wanted: Wanted;
  /** What the last bracket that is still open ends with. */
  readonly open: '}' | ']' | null;
}

/** The first place at which the text cannot go on to become JSON. */
function firstFault(text: string): Fault {
  const ends: ('}' | ']')[] = [];
  let wanted: Wanted = 'value';
  let at = 0;
  const fault = (place: number, what = wanted): Fault => ({
    at: place,
    wanted: what,
    open: ends.at(-1) ?? null,
  });
  const afterValue = (): Wanted => (ends.length === 0 ? 'nothing' : 'comma or end');
  for (;;) {
    at = endOf(BLANK, text, at);
    const letter = text[at];
    if (letter === undefined) return fault(at);
    if (letter === '"' && !['colon', 'comma or end', 'nothing'].includes(wanted)) {
      const end = endOfText(text, at);
      if (text[end] !== '"') return fault(end, 'text');
      at = end + 1;
      wanted = wanted.startsWith('name') ? 'colon' : afterValue();
    } else if (letter === ends.at(-1) && (wanted === 'comma or end' || wanted.endsWith(letter))) {
      ends.pop();
      at++;
      wanted = afterValue();
    } else if (letter === ',' && wanted === 'comma or end') {
      at++;
      wanted = ends.at(-1) === '}' ? 'name' : 'value';
    } else if (letter === ':' && wanted === 'colon') {
      at++;
      wanted = 'value';
    } else if (!wanted.startsWith('value')) {
      return fault(at);
    } else if (letter === '{' || letter === '[') {
      ends.push(letter === '{' ? '}' : ']');
      at++;
      wanted = letter === '{' ? 'name or }' : 'value or ]';
    } else {
      const end = Math.max(endOf(NUMBER, text, at), endOf(WORD, text, at));
      if (end === at) return fault(at);
      at = end;
      wanted = afterValue();
    }
  }
}

function wordsFor(wanted: Wanted, open: Fault['open']): string {
  switch (wanted) {
    case 'value':
      return 'a value';
    case 'value or ]':
      return 'a value or "]"';
    case 'name':
      return 'a name in quotes';
    case 'name or }':
      return 'a name in quotes or "}"';
    case 'colon':
      return 'a colon';
    case 'comma or end':
      return `a comma or "${open}"`;
    case 'nothing':
      return 'nothing more';
    case 'text':
      return 'the rest of a text in quotes';
  }
}
