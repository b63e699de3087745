// A card that leaves this device or comes to it: as a file, or packed into a link behind the #, where no server sees it.
import {
  type CardFile,
  cardBoundsProblem,
  cardDraftSchema,
  parseCard,
  readJson,
} from '../../../shared-engine/index.ts';
import { packText, unpackText } from '../../app/routes/packed-text.ts';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { CARD_LINK } from './strings.ts';

/** A card as its file has it: the same bytes wherever it is written, its entries in the order of the format. */
export function cardText(card: CardFile): string {
  return `${JSON.stringify(cardDraftSchema.parse(card), null, 2)}\n`;
}

export function saveCard(card: CardFile): void {
  saveFile(`${fileName(card.name)}.json`, 'application/json', cardText(card));
}

export function packCard(card: CardFile): Promise<string> {
  return packText(cardText(card));
}

export type UnpackedCard =
  | { readonly ok: true; readonly card: CardFile }
  | { readonly ok: false; readonly problems: readonly string[] };

/** Never throws: what is torn, foreign or of a later version comes back as words. */
export async function unpackCard(packed: string): Promise<UnpackedCard> {
  const unpacked = await unpackText(packed);
  return unpacked.ok ? readCardText(unpacked.text) : { ok: false, problems: [CARD_LINK[unpacked.why]] };
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
