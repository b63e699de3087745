// Drills against a server: sixty hard constraints each, from senders who hang up, while a teacher opens an ordinary class.
import { type ClientRequest, request } from 'node:http';
import { setTimeout as pause } from 'node:timers/promises';
import { CLASSES_PATH } from '../../../shared-engine/protocol/paths.ts';
import { TERMS } from '../../kit/class-room.ts';
import { dealOf, drillOf, HARD_CONSTRAINT } from '../../kit/drills.ts';
import { post } from '../../kit/http-client.ts';
import { seedNamed } from '../../kit/rounds.ts';
import type { Size } from '../proof.ts';
import type { Finding } from './finding.ts';
import { cpuMs, metricOf, type WatchedServer } from './watched-server.ts';

const PART = 'drills';
/** What one drill may take of a worker, and how long a class may take to open meanwhile, in milliseconds. */
const MAX_DRILL_MS = 15_000;
const MAX_OPEN_MS = 5_000;
/** How long the work of somebody who has hung up may go on; a worker that is then still busy is ended. */
const ENDED_WITHIN_MS = 10_000;

const ORDINARY = drillOf([dealOf({ kind: 'random', seed: seedNamed('an ordinary class') })]);

/** Each rack takes some hundred thousand tries; 10 KB of JSON. */
function hardDrill(name: string) {
  const constraint = HARD_CONSTRAINT;
  return drillOf(
    Array.from({ length: 60 }, (_, nth) =>
      dealOf({ kind: 'sampled', constraint, seed: seedNamed(`${name} ${nth}`) }, { id: `hard-${nth}` }),
    ),
  );
}

export async function siegeDrills(server: WatchedServer, size: Size): Promise<Finding[]> {
  const senders = ['one', 'another'].map((name) => sendHard(server, name));
  await until(async () => (await metricOf(server, 'tasks_running')) > 0);
  const from = performance.now();
  const status = await openOrdinary(server);
  const tookMs = Math.round(performance.now() - from);
  const unanswered = senders.filter(({ answered }) => !answered()).length;
  const findings = [
    row(
      'an ordinary class opens while two hard drills are prepared',
      '201, before either',
      `${status}, before ${unanswered}`,
      status === 201 && unanswered === 2,
    ),
  ];
  for (const { hangUp } of senders) hangUp();
  const isOver = await until(async () => (await workOf(server)) === 0);
  findings.push(
    row('work for senders who have hung up', 'ends', isOver ? 'ended' : 'goes on', isOver),
    row('the next ordinary class', '201', `${await openOrdinary(server)}`, isOver),
  );
  if (size === 'small') return findings;
  findings.push(
    row(
      'time until that class was open, in ms',
      `at most ${MAX_OPEN_MS}`,
      `${tookMs}`,
      tookMs <= MAX_OPEN_MS,
    ),
  );
  return [...findings, ...(await wholeDrill(server)), ...(await manyDrills(server))];
}

/** One that nobody hangs up on, to its end. */
async function wholeDrill(server: WatchedServer): Promise<Finding[]> {
  const before = cpuMs(server);
  const response = await post(`${server.url}${CLASSES_PATH}`, {
    drill: hardDrill('whole'),
    terms: TERMS,
    card: null,
  });
  const { code, problems } = await response.json();
  const after = cpuMs(server);
  const ms = before === null || after === null ? null : after - before;
  const words = String(problems?.at(-1));
  return [
    row(
      'sixty hard constraints',
      'rejected, naming the deal',
      `${code}: ${words}`,
      code === 'bad-drill' && /^Deal \d+: /.test(words),
    ),
    row(
      'processor time they took, in ms',
      `at most ${MAX_DRILL_MS}`,
      `${ms}`,
      ms === null || ms <= MAX_DRILL_MS,
    ),
  ];
}

/** More than a sender's share, all at once. */
async function manyDrills(server: WatchedServer): Promise<Finding[]> {
  const senders = Array.from({ length: 10 }, (_, nth) => sendHard(server, `many ${nth}`));
  const isRejected = await until(async () => senders.filter(({ answered }) => answered() === 503).length > 0);
  for (const { hangUp } of senders) hangUp();
  const isOver = await until(async () => (await workOf(server)) === 0);
  return [
    row(
      'ten hard drills of one sender',
      'some are told to wait, all end',
      `${isRejected}, ${isOver}`,
      isRejected && isOver,
    ),
  ];
}

interface Sender {
  /** The status of the answer, once there is one. */
  answered(): number | null;
  hangUp(): void;
}

/** Behind an address of its own where the system has more than one on the loopback. */
function sendHard({ url }: WatchedServer, name: string): Sender {
  let status: number | null = null;
  const body = JSON.stringify({ drill: hardDrill(name), terms: TERMS, card: null });
  const headers = { 'content-type': 'application/json', 'content-length': Buffer.byteLength(body) };
  const localAddress = process.platform === 'linux' ? '127.0.0.2' : '127.0.0.1';
  const sent: ClientRequest = request(`${url}${CLASSES_PATH}`, {
    method: 'POST',
    headers,
    localAddress,
    agent: false,
  });
  sent.on('response', (response) => {
    status = response.statusCode ?? 0;
    response.resume();
  });
  // Hung up by us.
  sent.on('error', () => {});
  sent.end(body);
  return { answered: () => status, hangUp: () => sent.destroy() };
}

async function openOrdinary({ url }: WatchedServer): Promise<number> {
  return (await post(`${url}${CLASSES_PATH}`, { drill: ORDINARY, terms: TERMS, card: null })).status;
}

async function workOf(server: WatchedServer): Promise<number> {
  return (await metricOf(server, 'tasks_running')) + (await metricOf(server, 'tasks_waiting'));
}

/** Whether it came true in time. */
async function until(isTrue: () => Promise<boolean>): Promise<boolean> {
  const end = performance.now() + ENDED_WITHIN_MS;
  while (performance.now() < end) {
    if (await isTrue()) return true;
    await pause(20);
  }
  return false;
}

function row(what: string, bar: string, found: string, holds: boolean): Finding {
  return { part: PART, what, bar, found, holds };
}
