// The command that plays one round: same seed, same bytes; what it prints is the round; wrong words get one message.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { type PlayedRound, playedRound } from '../../server/cli/played-round.ts';
import { asksForHelp, readRequest } from '../../server/cli/round-request.ts';
import { roundText } from '../../server/cli/round-text.ts';
import { withDeepAnalysis } from '../../shared-engine/analysis/review/deep-analysis.ts';
import { HOUSE_CARD, houseCard } from '../../shared-engine/card/house/card.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';
import { STYLES } from '../../shared-engine/policy/styles.ts';
import { commitmentOf } from '../../shared-engine/rules/deal/commitment.ts';
import { forFour } from '../../shared-engine/rules/deal/seat.ts';
import type { RoundEvent } from '../../shared-engine/rules/exchange/event.ts';
import { replay } from '../../shared-engine/rules/exchange/evolve.ts';
import { facesOf } from '../../shared-engine/rules/tiles/bag.ts';
import { SAMPLE_LEDGER } from '../kit/fake-analysis.ts';
import { analysisWith } from '../kit/made-up-analyses.ts';
import { seedNamed } from '../kit/rounds.ts';
import { builtCommand } from '../kit/server-process.ts';

const root = new URL('../..', import.meta.url);
const folder = mkdtempSync(path.join(tmpdir(), 'round-'));
afterAll(() => rmSync(folder, { recursive: true }));

function run(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, [builtCommand('round'), ...args], {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  });
  return { status, stdout, stderr };
}

function cardFile(name: string, content: unknown): string {
  const file = path.join(folder, name);
  writeFileSync(file, typeof content === 'string' ? content : JSON.stringify(content));
  return file;
}

const seed = seedNamed('command');

describe('round --json', () => {
  const args = ['--seed', seed, '--card', 'house', '--seats', 'strong,casual,guarded,random', '--json'];
  const first = run(...args);
  const played: PlayedRound = JSON.parse(first.stdout);

  it('prints the same bytes for the same seed and nothing on stderr', () => {
    expect(first).toMatchObject({ status: 0, stderr: '' });
    expect(run(...args).stdout).toBe(first.stdout);
  });

  it('prints a log that replays to the racks it prints (E2)', () => {
    const round = replay(played.log);
    expect(round?.phase).toBe('closed');
    expect(played.racks.after).toEqual(round?.racks.map(facesOf));
    const kernel = createSwarKernel(houseCard());
    expect(played.toGo.after).toEqual(round?.racks.map((rack) => kernel.toGo(rack)));
  });

  it('D4 prints a commitment that its seed opens', () => {
    const { seed, dealer, log } = played;
    const [dealt] = log;
    if (dealt?.kind !== 'dealt') throw new Error('nothing is dealt');
    const head = { roundId: dealt.roundId, dealer, terms: dealt.terms };
    expect(commitmentOf({ seed, dealer }, head)).toBe(played.commitment);
  });

  it('Z1 prints a review for each seat, with the tiles to go of its racks', () => {
    expect(played.reviews.map(({ seat }) => seat)).toEqual([0, 1, 2, 3]);
    expect(played.reviews.map(({ toGoStart }) => toGoStart)).toEqual(played.toGo.before);
    expect(played.reviews.map(({ toGoEnd }) => toGoEnd)).toEqual(played.toGo.after);
  });

  it('says as text why four worths do not add up, and whether guesses were right, once there are any', () => {
    const apart = 'So what the four racks are worth does not add up to 100.';
    expect(roundText(played)).not.toContain(apart);
    const neighbors = [{ toward: 'right', longest: { bam: 0.6, crak: 0.2, dot: 0.1 } }] as const;
    const ledger = { ...SAMPLE_LEDGER, neighbors };
    const [a, b, c, d] = played.reviews;
    const told = roundText({ ...played, reviews: [{ ...a, ledger }, b, c, d] });
    expect(told.split(apart)).toHaveLength(2);
    const bams = played.racks.after[1].filter((face) => face.startsWith('bam')).length;
    expect(told).toMatch(
      new RegExp(`We guessed that the player on the right ended .* By the racks .* right: ${bams} bam`),
    );
  });

  it('says as text how a first look is made only where one is told, and otherwise who its players are', () => {
    const first = 'At first look, every legal pass';
    const names = 'Easy-going players pass about as bots of the style casual do.';
    expect(roundText(played)).toContain(first);
    expect(roundText(played)).not.toContain(names);
    const deep = forFour((seat) =>
      played.reviews[seat].choices.reduce(
        (review, choice, nth) => withDeepAnalysis(review, nth, analysisWith(choice, [[-1_000, 500]])),
        played.reviews[seat],
      ),
    );
    const told = roundText({ ...played, reviews: deep });
    expect(told).not.toContain(first);
    expect(told.split(names)).toHaveLength(2);
  });

  it('says as text that nothing was passed, or what went blind alone', () => {
    const log = played.log.map((event): RoundEvent => {
      if (event.kind !== 'resolved' || event.outcome.kind !== 'move') return event;
      const { gave, forwarded } = event.outcome;
      const outcome = {
        ...event.outcome,
        gave: [[], [], gave[2], gave[3]] as const,
        forwarded: [[], ['bam-1', 'bam-2'], forwarded[2], forwarded[3]] as const,
      };
      return { ...event, outcome };
    });
    const told = roundText({ ...played, log });
    expect(told).toContain('\n  seat 0 to seat 1: nothing\n');
    expect(told).toContain('\n  seat 1 to seat 2: blind bam-1 bam-2\n');
  });

  it('plays no choice on unless it is asked to', () => {
    const depths = played.reviews.flatMap(({ choices }) => choices.map(({ analysis }) => analysis.depth));
    expect(new Set(depths)).toEqual(new Set(['quick']));
  });
});

describe('round --help', () => {
  it('says on stdout what each option takes, and plays nothing, whatever else is asked for', () => {
    const { status, stdout, stderr } = run('--help');
    expect({ status, stderr }).toEqual({ status: 0, stderr: '' });
    for (const option of ['seed', 'card', 'seats', 'dealer', 'ways', 'deep', 'json', 'help']) {
      expect(stdout).toMatch(new RegExp(`^  --${option} `, 'm'));
    }
    for (const name of [...STYLES, 'secondCharleston']) expect(stdout).toContain(name);
    expect(stdout).not.toContain('Seed  ');
    expect(asksForHelp(['--tempo', '3', '-h'])).toBe(true);
    expect(asksForHelp(['--deep'])).toBe(false);
  });
});

describe('round as text', () => {
  it('without a seed draws one, prints it, and the printed seed plays the same round again', () => {
    const fresh = run('--seats', 'random,random,random,random');
    const printed = /^Seed +([0-9a-f]{64})$/m.exec(fresh.stdout)?.[1];
    expect(printed).toBeDefined();
    const again = run('--seats', 'random,random,random,random', '--seed', printed ?? '');
    expect(again).toEqual(fresh);
    const other = run('--seats', 'random,random,random,random');
    expect(other.stdout).not.toBe(fresh.stdout);
  });

  it('D2 gives the dealer named fourteen tiles and tells every step and seat', () => {
    const { stdout } = run('--seed', seed, '--dealer', '2', '--seats', 'strong,strong,strong,strong');
    const dealt = stdout.split('\n').filter((line) => /^ {2}seat \d \(strong\)/.test(line));
    const sizes = dealt.map((line) => line.slice(line.indexOf(': ') + 2).split(' ').length);
    expect(sizes).toEqual([13, 13, 14, 13, 13, 13, 14, 13]);
    for (const heading of [
      'First right',
      'First across',
      'First left',
      'Second Charleston?',
      'At the close',
    ]) {
      expect(stdout).toContain(`\n${heading}`);
    }
    for (const seat of [0, 1, 2, 3]) expect(stdout).toContain(`Review for seat ${seat}: `);
  });

  it('plays on a card file of one’s own', () => {
    const file = cardFile('own.json', { ...HOUSE_CARD, id: 'own', name: 'Ines’s card' });
    const { status, stdout } = run('--seed', seed, '--card', file);
    expect(status).toBe(0);
    expect(stdout).toMatch(/^Card +Ines’s card$/m);
  });
});

describe('words that the command does not know get one message and exit 2', () => {
  const [pattern, ...patterns] = HOUSE_CARD.patterns;
  const [group, ...groups] = pattern!.groups;
  const thirteen = { ...pattern!, groups: [{ ...group!, size: group!.size - 1 }, ...groups] };

  it('which stands on stderr, with nothing on stdout', () => {
    const rejected = run('--seed', 'abc');
    expect(rejected).toMatchObject({ status: 2, stdout: '' });
    expect(rejected.stderr).toBe('--seed takes 64 hexadecimal digits, not "abc".\n');
  });

  it('a card file with a pattern of 13 tiles is rejected by the name of that pattern', () => {
    const file = cardFile('short.json', { ...HOUSE_CARD, patterns: [thirteen, ...patterns] });
    const { status, stdout, stderr } = run('--card', file, '--json');
    expect({ status, stdout }).toEqual({ status: 2, stdout: '' });
    expect(stderr).toContain(`"${pattern!.id}"`);
    expect(stderr).toContain('13');
    expect(stderr.trimEnd()).not.toContain('\n');
  });

  const cases: readonly (readonly [string, readonly string[], RegExp])[] = [
    ['an unknown option', ['--tempo', '3'], /^Use only --seed HEX/],
    ['a word too many', ['house'], /^Use only --seed HEX/],
    ['an option without its value', ['--seed'], /^Use only --seed HEX/],
    ['a seed of 63 digits', ['--seed', 'a'.repeat(63)], /64 hexadecimal digits/],
    ['a fifth seat as dealer', ['--dealer', '4'], /seat from 0 to 3, not "4"/],
    ['a dealer in words', ['--dealer', 'east'], /seat from 0 to 3, not "east"/],
    ['three styles', ['--seats', 'strong,strong,strong'], /four of casual, typical/],
    ['five styles', ['--seats', 'strong,strong,strong,strong,strong'], /four of casual, typical/],
    ['an unknown style', ['--seats', 'strong,strong,strong,brave'], /not "strong,strong,strong,brave"/],
    ['a way to play that is none', ['--ways', 'courtesy=sometimes'], /^--ways takes name=value/],
    ['three players', ['--ways', 'players=3'], /^Four seats play here/],
    ['blank tiles', ['--ways', 'blankTiles=6'], /no blank ones/],
    ['a pot', ['--ways', 'courtesy=pot'], /^There is no pot here/],
    ['a missing card file', ['--card', path.join(folder, 'none.json')], /cannot be read/],
    ['a card file that is not JSON', ['--card', cardFile('not.json', '{')], /is not JSON/],
    ['a card file of another format', ['--card', cardFile('empty.json', {})], /^Card: /],
  ];
  it.each(cases)('%s', (_, args, message) => {
    const request = readRequest(args);
    expect(request.ok ? '' : request.message).toMatch(message);
    expect(request.ok ? '' : request.message).not.toContain('\n');
  });

  it('W2 W3 W4 ways to play are taken, and the round is played by them', () => {
    const request = readRequest([
      '--seed',
      seed,
      '--seats',
      'casual,casual,casual,casual',
      '--ways',
      'secondCharleston=always, blindPasses=false, courtesy=none',
    ]);
    if (!request.ok) throw new Error(request.message);
    const { log } = playedRound(request);
    const moves = log.flatMap((event) => (event.kind === 'resolved' ? [event.outcome] : []));
    expect(moves.map((move) => move.kind === 'move' && move.blind.join())).toEqual(
      new Array(6).fill('0,0,0,0'),
    );
  });

  it('every style is known by name and capital hexadecimal digits are taken', () => {
    for (const style of STYLES) {
      const request = readRequest([
        '--seats',
        `${style}, ${style},${style},${style}`,
        '--seed',
        'AB'.repeat(32),
      ]);
      expect(request).toMatchObject({ ok: true, seed: 'ab'.repeat(32), seats: [style, style, style, style] });
    }
  });
});
