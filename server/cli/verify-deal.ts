// npm run --silent verify-deal -- FILE: says in words whether the deal in a saved file is the one committed to.
import { readFileSync } from 'node:fs';
import {
  checkDealFile,
  type DealFile,
  dealFileSchema,
  type RoundCheck,
  rootWords,
} from '../../shared-engine/index.ts';

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
const parsed = dealFileSchema.safeParse(json);
if (parsed.success) {
  const check = checkDealFile(parsed.data);
  console.log(check === null || check.ok ? confirmation(parsed.data) : contradiction(parsed.data, check));
  if (check?.ok === false) process.exitCode = 1;
} else {
  const where = parsed.error.issues[0]?.path.join('.') || 'the file as a whole';
  fail(`"${file}" is not a saved deal (look at: ${where}). ${HOW_TO_SAVE}`);
}

/** What has been checked, and what nobody can check by this file. */
function confirmation(file: DealFile): string {
  switch (file.kind) {
    case 'prepared':
      return 'A teacher prepared this deal: its tiles were chosen, not left to chance, so nothing was committed to and there is nothing to check.';
    case 'own-rack':
      return [
        `The rack holds: these ${file.rack.length} tiles are the ones committed to for seat ${file.seat + 1} of round ${file.roundId} before the first pass.`,
        wordsOf(file.commitment),
        'Racks stayed private, so the file says nothing of the other racks and the wall, and not whether the shuffle was fair.',
      ].join('\n');
    case 'open-round':
      return [
        `The round holds: all four racks, the wall and every pass of round ${file.roundId}, blind ones too, come out again as they were committed to before the first pass.`,
        wordsOf(file.commitment),
        'The file does not say that the seed was drawn by chance.',
      ].join('\n');
  }
}

function wordsOf(commitment: string): string {
  return `Its six words: ${rootWords(commitment).join(' ')}. The file alone does not show that they were published before the first pass: compare them with the words noted then.`;
}

function contradiction({ kind }: DealFile, check: RoundCheck & { ok: false }): string {
  switch (check.reason) {
    case 'bad-seed':
      return 'The round does not hold. The seed is not 64 hexadecimal digits, so nothing can be dealt from it.';
    case 'wrong-commitment':
      return kind === 'own-rack'
        ? 'The rack does not hold. The commitment was not made for these tiles at this seat of this round.'
        : 'The round does not hold. The seed is not the one that was committed to before the first pass for this round, East and terms.';
    case 'wrong-rack':
      return 'The round does not hold. The seed was committed to, but it deals other tiles to that seat than the file says.';
    case 'wrong-move':
      return `The round does not hold. The pass "${check.step}" comes out otherwise than the file says.`;
    case 'wrong-end':
      return 'The round does not hold. The passes lead to other racks than the file says.';
  }
}
