// npm run --silent verify-deal -- FILE: says in words whether the deal in a saved file was the one promised.
import { readFileSync } from 'node:fs';
import {
  bagOf,
  checkDeal,
  type DealFile,
  dealFileSchema,
  preparedDealFileSchema,
} from '../../shared-engine/index.ts';

const EXPLANATIONS = {
  'bad-seed': 'The seed is not 64 hexadecimal digits, so nothing can be dealt from it.',
  'wrong-commitment':
    'The seed is not the one that was promised before the first pass: its SHA-256 differs from the commitment.',
  'wrong-rack': 'The seed was promised, but it deals other tiles to that seat than the file says.',
} as const;

const HOW_TO_SAVE = 'Save the deal again from the review page of the round and give that file.';

function fail(message: string): never {
  console.error(message);
  process.exit(2);
}

const [file, ...more] = process.argv.slice(2);
if (file === undefined || more.length > 0) fail('Give one file: npm run --silent verify-deal -- FILE');

let json: unknown;
try {
  json = JSON.parse(readFileSync(file, 'utf8'));
} catch {
  fail(`"${file}" cannot be read as JSON. ${HOW_TO_SAVE}`);
}
const prepared = preparedDealFileSchema.safeParse(json);
const parsed = dealFileSchema.safeParse(json);
if (prepared.success) {
  console.log(
    'A teacher prepared this deal: its tiles were chosen, not left to chance, so nothing was promised and there is nothing to check.',
  );
} else if (parsed.success) {
  report(parsed.data);
} else {
  const where = parsed.error.issues[0]?.path.join('.') || 'the file as a whole';
  fail(`"${file}" is not a saved deal (look at: ${where}). ${HOW_TO_SAVE}`);
}

function report({ commitment, seed, dealer, seat, rack }: DealFile): void {
  const check = checkDeal({ seed, dealer }, commitment, { seat, rack: bagOf(rack) });
  if (check.ok) {
    console.log(
      `The deal holds: the seed is the one promised before the first pass, and it deals these ${rack.length} tiles to seat ${seat + 1} when seat ${dealer + 1} is East.`,
    );
  } else {
    console.log(`The deal does not hold. ${EXPLANATIONS[check.reason]}`);
    process.exitCode = 1;
  }
}
