// A card that leaves this device or comes to it: as a file, or packed into a link behind the #, where no server sees it.
import {
  type CardFile,
  cardBoundsProblem,
  cardDraftSchema,
  parseCard,
  readJson,
} from '../../../shared-engine/index.ts';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { CARD_LINK } from './strings.ts';

/** Format of the packing; a link with another number is of a later version. */
const VERSION = '1';
/** Bytes that a packed card may unpack to: the largest allowed card takes a third of it. */
const MAX_BYTES = 2_000_000;

/** A card as its file has it: the same bytes wherever it is written, its entries in the order of the format. */
export function cardText(card: CardFile): string {
  return `${JSON.stringify(cardDraftSchema.parse(card), null, 2)}\n`;
}

export function saveCard(card: CardFile): void {
  saveFile(`${fileName(card.name)}.json`, 'application/json', cardText(card));
}

/** `1.` and the card, compressed with a check sum, in letters that links take. */
export async function packCard(card: CardFile): Promise<string> {
  const bytes = await through(new TextEncoder().encode(cardText(card)), new CompressionStream('gzip'));
  return `${VERSION}.${base64Url(bytes)}`;
}

export type UnpackedCard =
  | { readonly ok: true; readonly card: CardFile }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Never throws: what is torn, foreign or of a later version comes back as words. */
export async function unpackCard(packed: string): Promise<UnpackedCard> {
  const [, version, body] = /^(\d+)\.([\w-]+)$/.exec(packed) ?? [];
  if (version === undefined || body === undefined) return { ok: false, problems: [CARD_LINK.foreign] };
  if (version !== VERSION) return { ok: false, problems: [CARD_LINK.later] };
  try {
    const bytes = await through(bytesOf(body), new DecompressionStream('gzip'));
    return readCardText(new TextDecoder().decode(bytes));
  } catch {
    return { ok: false, problems: [CARD_LINK.torn] };
  }
}

/** A file or the inside of a link. */
export function readCardText(text: string): UnpackedCard {
  const read = readJson(text);
  if (!read.ok) return { ok: false, problems: [CARD_LINK.noCard(read.message)] };
  const json = read.value;
  const parsed = parseCard(json);
  if (parsed.ok) return parsed;
  const draft = draftOf(json);
  return draft
    ? { ok: true, card: draft }
    : { ok: false, problems: parsed.problems.map(({ message }) => message) };
}

/** A card in the making, whose hands the editor can say more about; null where its structure does not hold. */
function draftOf(json: unknown): CardFile | null {
  const draft = cardBoundsProblem(json) === null ? cardDraftSchema.safeParse(json) : null;
  if (!draft?.success) return null;
  const { sections, patterns } = draft.data;
  const ids = new Set(sections.map(({ id }) => id));
  const isWhole =
    ids.size === sections.length &&
    new Set(patterns.map(({ id }) => id)).size === patterns.length &&
    patterns.every(({ section }) => ids.has(section));
  return isWhole ? draft.data : null;
}

async function through(
  bytes: Uint8Array<ArrayBuffer>,
  pipe: GenericTransformStream,
): Promise<Uint8Array<ArrayBuffer>> {
  const reader = new Blob([bytes]).stream().pipeThrough<Uint8Array<ArrayBuffer>>(pipe).getReader();
  const parts: Uint8Array<ArrayBuffer>[] = [];
  let size = 0;
  for (let read = await reader.read(); !read.done; read = await reader.read()) {
    parts.push(read.value);
    size += read.value.length;
    // A few letters can unpack to gigabytes.
    if (size > MAX_BYTES) throw new Error('larger than any card');
  }
  return new Uint8Array(await new Blob(parts).arrayBuffer());
}

function base64Url(bytes: Uint8Array): string {
  const letters = Array.from(bytes, (byte) => String.fromCharCode(byte)).join('');
  return btoa(letters).replaceAll('+', '-').replaceAll('/', '_').replace(/=+$/, '');
}

function bytesOf(letters: string): Uint8Array<ArrayBuffer> {
  const binary = atob(letters.replaceAll('-', '+').replaceAll('_', '/'));
  return Uint8Array.from(binary, (letter) => letter.charCodeAt(0));
}
