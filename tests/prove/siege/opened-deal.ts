// Part 8: what the close of a round opens, and what the command that checks a saved deal says of it.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import type { DealFile } from '../../../shared-engine/protocol/deal-file.ts';
import { DEAL_FORMAT, roundIdOf } from '../../../shared-engine/rules/deal/commitment.ts';
import { SEATS } from '../../../shared-engine/rules/deal/seat.ts';
import { FRIENDS, openRoom, ownView, playOn, sitDown } from '../../kit/http-client.ts';
import { builtCommand } from '../../kit/server-process.ts';
import type { Peer } from '../../kit/sockets.ts';
import { type Attack, findingsOf } from './siege.ts';

const tell = findingsOf('8 opened deal');

export const openedDeal: Attack = async ({ server, seed, folder }) => {
  const host = await openRoom(server, { ...FRIENDS, bots: ['casual', 'casual', 'casual'] });
  const peer = await sitDown(server, host);
  await peer.act({ kind: 'ready', ready: true });
  await peer.untilTable(({ round }) => round === 1, 'the deal');
  await playOn(peer, seed);
  await peer.close();
  const { stage } = ownView(peer);
  const told = stage.phase === 'closed' ? [stage.opened, stage.racks] : ['not closed'];
  const strangers = hexTexts(peer).filter((text) => !isOfOwnProof(peer, text));
  const file = ownRackOf(peer);
  const wrongSeat = SEATS.find((other) => other !== file.seat)!;
  const verdicts = [file, { ...file, seat: wrongSeat }];
  const place = await folder();
  const codes = await Promise.all(verdicts.map((one, n) => verify(path.join(place, `deal-${n}.json`), one)));
  return [
    tell(
      'racks stay private: seed and racks that the close tells',
      'none',
      told,
      told.every((x) => x === null),
    ),
    tell(
      `64-digit numbers in ${peer.frames.length} frames that are no part of the own proof`,
      '0',
      strangers.length,
      strangers.length === 0,
    ),
    tell(
      'exit codes of verify-deal on the saved deal and with another seat',
      '0, 1',
      codes,
      codes.join() === '0,1',
    ),
  ];
};

/** What a seed would look like. */
function hexTexts({ frames }: Peer): string[] {
  return [...new Set(frames.flatMap((frame) => frame.match(/\b[0-9a-f]{64}\b/g) ?? []))];
}

function isOfOwnProof(peer: Peer, text: string): boolean {
  const { commitment, ownLeaf } = ownView(peer);
  return commitment === text || JSON.stringify(ownLeaf).includes(text);
}

/** As the review page saves it. */
function ownRackOf(peer: Peer): DealFile & { kind: 'own-rack' } {
  const { code, round } = peer.table;
  const { dealer, record, terms, commitment, ownLeaf } = ownView(peer);
  if (commitment === null || ownLeaf === null) throw new Error('the close gave no proof of the own rack');
  return {
    kind: 'own-rack',
    format: DEAL_FORMAT,
    dealer,
    seat: record.seat,
    rack: record.start,
    roundId: roundIdOf(code, round),
    terms,
    commitment,
    ownLeaf,
  };
}

/** The exit code of the command. */
async function verify(file: string, deal: unknown): Promise<unknown> {
  writeFileSync(file, JSON.stringify(deal));
  // Not the synchronous way: while this process stands still, the server may end a connection that it then uses.
  const command = spawn(process.execPath, [builtCommand('verify-deal'), file], { stdio: 'ignore' });
  const [code] = await once(command, 'exit');
  return code;
}
