// From the words of the command line to a table that can be played, or one message that says what to change.
import { randomBytes } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { parseArgs } from 'node:util';
import {
  askedTermsSchema,
  type CompiledCard,
  compileCard,
  type Four,
  houseCard,
  isSeed,
  parseCard,
  SEATS,
  type Seat,
  STYLES,
  type StyleName,
  type Terms,
  termsFrom,
} from '../../shared-engine/index.ts';

export interface TableRequest {
  readonly seed: string;
  readonly dealer: Seat;
  readonly seats: Four<StyleName>;
  readonly card: CompiledCard;
  readonly terms: Terms;
}

export type RoundRequest =
  | (TableRequest & { readonly ok: true; readonly json: boolean; readonly deep: boolean })
  | { readonly ok: false; readonly message: string };

const TERM_NAMES = Object.keys(askedTermsSchema.shape);
const OPTIONS = {
  seed: { type: 'string' },
  card: { type: 'string', default: 'house' },
  seats: { type: 'string', default: 'strong,casual,guarded,random' },
  dealer: { type: 'string', default: '0' },
  ways: { type: 'string', default: '' },
  deep: { type: 'boolean', default: false },
  json: { type: 'boolean', default: false },
} as const;
const USAGE =
  '--seed HEX, --card house or a file, --seats with four styles, --dealer 0 to 3, --ways with ways to play, --deep and --json';

export const HELP = `Four bots play one round of the exchange. Printed are the tiles dealt, every pass, and a review for each seat.

npm run --silent round -- [options]
  --seed HEX        64 hexadecimal digits; the same seed plays the same round. Without it one is drawn and printed.
  --card FILE       a card file; without it, or with house, the house card.
  --seats A,B,C,D   four styles of ${STYLES.join(', ')};
                    without it ${OPTIONS.seats.default}.
  --dealer N        the seat that is East, 0 to 3; without it 0.
  --ways NAME=VALUE other ways to play, with commas between: ${TERM_NAMES.join(', ')}.
  --deep            plays every choice on many times, which takes a minute or two: verdicts in wins, luck and choices.
  --json            prints everything as JSON.
  --help            prints this.
`;

/** Whatever else is asked for. */
export function asksForHelp(args: readonly string[]): boolean {
  return args.includes('--help') || args.includes('-h');
}

/** Reads the arguments after the script's name, and the card file where one is named. */
export function readRequest(args: readonly string[]): RoundRequest {
  const values = optionsOf(args);
  if (values === null) return { ok: false, message: `Use only ${USAGE}; --help says more.` };
  const seed = (values.seed ?? randomBytes(32).toString('hex')).toLowerCase();
  if (!isSeed(seed)) {
    return { ok: false, message: `--seed takes 64 hexadecimal digits, not ${quoted(seed)}.` };
  }
  const dealer = SEATS.find((seat) => String(seat) === values.dealer);
  if (dealer === undefined) {
    return { ok: false, message: `--dealer takes a seat from 0 to 3, not ${quoted(values.dealer)}.` };
  }
  const ways = waysFrom(values.ways);
  if (!ways.ok) return ways;
  const seats = seatsFrom(values.seats);
  if (seats === null) {
    const known = STYLES.join(', ');
    return {
      ok: false,
      message: `--seats takes four of ${known}, with commas between; not ${quoted(values.seats)}.`,
    };
  }
  const card = values.card === 'house' ? { ok: true as const, card: houseCard() } : cardFrom(values.card);
  return card.ok
    ? {
        ok: true,
        seed,
        dealer,
        seats,
        card: card.card,
        terms: ways.terms,
        json: values.json,
        deep: values.deep,
      }
    : card;
}

function optionsOf(args: readonly string[]) {
  try {
    return parseArgs({ args: [...args], options: OPTIONS }).values;
  } catch {
    return null;
  }
}

/** `secondCharleston=none,blindPasses=false`; each name once, its values as the rules W1 to W6 have them. */
function waysFrom(text: string): ReturnType<typeof termsFrom> | { ok: false; message: string } {
  const entries = text === '' ? [] : text.split(',').map((entry) => entry.trim().split('='));
  const asked = entries.map(([name = '', value = '']) => [name, termValue(value)]);
  const read = askedTermsSchema.safeParse(Object.fromEntries(asked));
  if (read.success) return termsFrom(read.data, 'friends');
  const message = `--ways takes name=value with commas between, such as secondCharleston=none,blindPasses=false; not ${quoted(text)}. Names: ${TERM_NAMES.join(', ')}.`;
  return { ok: false, message };
}

function termValue(text: string): unknown {
  return /^(true|false|null|\d+)$/.test(text) ? JSON.parse(text) : text;
}

function seatsFrom(text: string): Four<StyleName> | null {
  const [a, b, c, d, ...more] = text.split(',').map((name) => STYLES.find((style) => style === name.trim()));
  return a && b && c && d && more.length === 0 ? [a, b, c, d] : null;
}

function cardFrom(path: string): { ok: true; card: CompiledCard } | { ok: false; message: string } {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    return { ok: false, message: `The card file ${quoted(path)} cannot be read; check its name.` };
  }
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    return { ok: false, message: `The card file ${quoted(path)} is not JSON.` };
  }
  const parsed = parseCard(json);
  if (parsed.ok) return { ok: true, card: compileCard(parsed.card) };
  const [first, ...others] = parsed.problems.map((problem) => problem.message);
  const more = others.length === 0 ? '' : ` (The first of ${parsed.problems.length} problems.)`;
  return { ok: false, message: `${first}${more}` };
}

function quoted(text: string): string {
  return JSON.stringify(text.length > 80 ? `${text.slice(0, 80)}…` : text);
}
