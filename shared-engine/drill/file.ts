// A drill file: the drill, the card that it is played on and how its class plays, so that it opens where neither is at hand.
import { type CardFile, compileCard, houseCard, parseCard, readJson } from '../card/index.ts';
import { createSwarKernel, type Kernel } from '../kernels/index.ts';
import { type ClassPart, classPartSchema, type Drill } from './format.ts';
import { parseDrill } from './parse.ts';
import { type DrillProblem, drillProblem } from './problem.ts';

/** What stands for the house card in a file, which every program that reads one has. */
const HOUSE = 'house';

/** Longer texts are not read: the largest drill and the largest card together take half of it. */
const MAX_CHARACTERS = 2_000_000;

export interface DrillFile {
  readonly drill: Drill;
  /** Left out where it is to be played on whatever card its reader has chosen. */
  readonly card?: CardFile | typeof HOUSE;
  readonly class?: ClassPart;
}

export type ReadDrillFile =
  | { readonly ok: true; readonly file: DrillFile }
  | { readonly ok: false; readonly problems: readonly DrillProblem[] };

/** A drill file as it was sent or read, taken apart without being checked. */
export interface DrillFileParts {
  readonly drill: unknown;
  /** Null for the house card, undefined where the file names none. */
  readonly card: unknown;
  readonly class: unknown;
}

export function drillFileParts(json: unknown): DrillFileParts {
  if (typeof json !== 'object' || json === null || Array.isArray(json)) {
    return { drill: json, card: undefined, class: undefined };
  }
  const { card, class: classPart, ...drill }: { readonly card?: unknown; readonly class?: unknown } = json;
  return { drill, card: card === HOUSE ? null : card, class: classPart };
}

/** Reads the text of a drill file; one without a card is read for the card of `kernel`. Never throws. */
export function readDrillFile(text: string, kernel: Kernel): ReadDrillFile {
  if (text.length > MAX_CHARACTERS) {
    const words = `the file has ${text.length} characters; the limit is ${MAX_CHARACTERS}.`;
    return { ok: false, problems: [drillProblem('too-large', null, words)] };
  }
  const json = readJson(text);
  if (!json.ok) {
    const words = `the file cannot be read as JSON. ${json.message} Save it again where it was made.`;
    return { ok: false, problems: [drillProblem('not-json', null, words)] };
  }
  const parts = drillFileParts(json.value);
  const card = cardOf(parts.card);
  const asClass = classPartOf(parts.class);
  const parsed = parseDrill(parts.drill, card.kernel ?? kernel);
  const problems = [...card.problems, ...asClass.problems, ...(parsed.ok ? [] : parsed.problems)];
  if (!parsed.ok || problems.length > 0) return { ok: false, problems };
  return { ok: true, file: { drill: parsed.drill, ...card.entry, ...asClass.entry } };
}

/** Null for the house card, undefined for none. */
function cardOf(json: unknown): {
  readonly entry: Pick<DrillFile, 'card'>;
  readonly kernel: Kernel | null;
  readonly problems: readonly DrillProblem[];
} {
  if (json === undefined) return { entry: {}, kernel: null, problems: [] };
  if (json === null) return { entry: { card: HOUSE }, kernel: createSwarKernel(houseCard()), problems: [] };
  const parsed = parseCard(json);
  if (parsed.ok) {
    return { entry: { card: parsed.card }, kernel: createSwarKernel(compileCard(parsed.card)), problems: [] };
  }
  const problems = parsed.problems.map(
    ({ message }): DrillProblem => ({ code: 'bad-card', deal: null, text: message, message }),
  );
  return { entry: {}, kernel: null, problems };
}

function classPartOf(json: unknown): {
  readonly entry: Pick<DrillFile, 'class'>;
  readonly problems: readonly DrillProblem[];
} {
  if (json === undefined) return { entry: {}, problems: [] };
  const parsed = classPartSchema.safeParse(json);
  if (parsed.success) return { entry: { class: parsed.data }, problems: [] };
  const words =
    '"class" must be an object with "deadline", which is 15 to 300 seconds or null, and "racks", "names", "cardClosed", "coach" and "takeHome", which are true or false.';
  return { entry: {}, problems: [drillProblem('not-in-format', null, words)] };
}

/** The file as text; read again it is the same. */
export function drillFileText({ drill, ...beside }: DrillFile): string {
  return `${JSON.stringify({ ...drill, ...beside }, null, 2)}\n`;
}
