// A conversation of a program with the server, from a seed: what PROTOCOL.md shows as its example.
import type { ClientMessage } from '../../shared-engine/protocol/messages.ts';
import { ROOMS_PATH, ticketPath } from '../../shared-engine/protocol/paths.ts';
import type { Table } from '../../shared-engine/protocol/table.ts';
import type { Face } from '../../shared-engine/rules/tiles/face.ts';
import { ownView, post, watch } from './http-client.ts';
import { startServer, type TestServer } from './server.ts';
import { Peer } from './sockets.ts';

const BOT_DELAY_MS = 900;

/** The lines of the conversation. A bot of the server chooses for seats 1 to 3 when the clock is moved on. */
export async function exampleConversation(): Promise<string[]> {
  const server = await startServer({
    seed: 'a whole conversation',
    settings: { BOT_DELAY_MS: String(BOT_DELAY_MS) },
  });
  try {
    return await conversation(server);
  } finally {
    await server.stop();
  }
}

async function conversation(server: TestServer): Promise<string[]> {
  const lines: string[] = [];
  const open = {
    name: 'Rote',
    mode: 'friends',
    terms: { deadline: null, revealRacks: false },
    bots: ['strong', 'casual', 'typical'],
    card: null,
    secretIn: 'body',
  };
  const { code, secret } = await asked(server, lines, { path: ROOMS_PATH, body: open });
  const path = ticketPath(code);
  const first = await asked(server, lines, { path, body: {}, secret });
  const peer = new Noted(await Peer.open(server.url), lines);
  await peer.say({ kind: 'hello', id: 'h1', versions: [1, 1], ticket: first.ticket });
  await peer.say({ kind: 'action', id: 'a1', action: { kind: 'ready', ready: true } });
  await peer.until(({ round }) => round === 1);
  const tiles = ownView(peer.peer).rack.filter((face) => face !== 'joker');
  await peer.say(pass('c1', tiles.slice(0, 2)));
  await peer.say(pass('c2', tiles.slice(0, 3)));
  await peer.say(pass('c2', tiles.slice(0, 3)));
  const resume = { seq: peer.seq(), you: 0 } as const;
  const spectator = await watch(server, code);
  await peer.peer.close();
  lines.push('  (the line is cut, and the bots choose)');
  await spectator.untilTable(({ seats: [host] }) => host.kind === 'person' && !host.present, 'the cut');
  server.clock.advance(2 * BOT_DELAY_MS);
  await spectator.untilTable(
    ({ view }) => view?.audience === 'spectator' && view.steps.length === 1,
    'the pass',
  );
  const second = await asked(server, lines, { path, body: {}, secret: first.secret });
  const back = new Noted(await Peer.open(server.url), lines);
  await back.say({ kind: 'hello', id: 'h2', versions: [1, 1], ticket: second.ticket, resume });
  return lines;
}

function pass(id: string, tiles: readonly Face[]): ClientMessage {
  const choice = { kind: 'pass', step: 'first-right', tiles: [...tiles], blind: 0 } as const;
  return { kind: 'choose', id, round: 1, seat: 0, choice };
}

interface Request {
  readonly path: string;
  readonly body: object;
  readonly secret?: string;
}

async function asked(server: TestServer, lines: string[], { path, body, secret }: Request) {
  const answer = await post(`${server.url}${path}`, body, secret);
  const json = await answer.json();
  lines.push(`→ POST ${path}`);
  if (secret !== undefined) lines.push(`  Authorization: Bearer ${secret}`);
  lines.push(`  ${JSON.stringify(body)}`, `← ${answer.status} ${JSON.stringify(json)}`);
  return json;
}

/** A connection whose frames are noted, those that come behind the one that was sent. */
class Noted {
  readonly peer: Peer;
  readonly #lines: string[];
  #noted = 0;

  constructor(peer: Peer, lines: string[]) {
    this.peer = peer;
    this.#lines = lines;
  }

  async say(message: ClientMessage): Promise<void> {
    this.#lines.push(`→ ${JSON.stringify(message)}`);
    this.peer.send(message);
    if (message.kind === 'hello')
      await this.peer.until('a number', ({ kind }) => kind === 'table' || kind === 'delta');
    else await this.peer.answerTo(message.id);
    await this.peer.roundTrip();
    this.#note();
  }

  async until(holds: (table: Table) => boolean): Promise<void> {
    await this.peer.untilTable(holds, 'the deal');
    await this.peer.roundTrip();
    this.#note();
  }

  /** Number of the last table. */
  seq(): number {
    return Math.max(...this.peer.messages.map((message) => ('seq' in message ? message.seq : 0)));
  }

  #note(): void {
    for (const frame of this.peer.frames.slice(this.#noted)) this.#lines.push(`← ${frame.trimEnd()}`);
    this.#noted = this.peer.frames.length;
  }
}
