// Part 11: the small things: slow requests, too many connections, names that deceive, TLS headers, races for a seat, starts that fail.
import { once } from 'node:events';
import { connect } from 'node:net';
import { roomPath, seatsPath } from '../../../shared-engine/protocol/paths.ts';
import { lobbySchema } from '../../../shared-engine/protocol/room-http.ts';
import { openRoom, post, takeSeat } from '../../kit/http-client.ts';
import { startProcess } from '../../kit/server-process.ts';
import type { Finding } from './finding.ts';
import { type Attack, type Besieged, findingsOf, type Siege, UNLIMITED } from './siege.ts';

const tell = findingsOf('11 low list');

export const lowList: Attack = async (siege) => {
  const { server, size } = siege;
  // Waits for the time-out of the server while everything else goes on.
  const slow = secondsUntilCutOff(server);
  return [
    await deceivingNames(server),
    await manyAtOnce(server),
    await headers(server),
    ...(await failingStarts(server)),
    ...(size === 'full' ? [await manyConnections(siege)] : []),
    await slowRow(slow),
  ];
};

/** A request whose head never ends. */
async function secondsUntilCutOff({ url }: Besieged): Promise<number> {
  const { hostname, port } = new URL(url);
  const started = performance.now();
  const socket = connect(Number(port), hostname, () =>
    socket.write('GET /healthz HTTP/1.1\r\nHost: x\r\nA: '),
  );
  socket.on('error', () => {});
  socket.resume();
  await once(socket, 'close');
  return (performance.now() - started) / 1000;
}

async function slowRow(slow: Promise<number>): Promise<Finding> {
  const seconds = await slow;
  return tell(
    'a request whose head never ends',
    'is cut off, after 10 s at the earliest',
    `is cut off after ${seconds.toFixed(1)} s`,
    seconds > 9.9,
  );
}

async function deceivingNames(server: Besieged): Promise<Finding> {
  const host = await openRoom(server);
  const hidden = ['In\u202Ees', 'In\u200Bes', '\u3164Ines'];
  const statuses = await Promise.all(
    hidden.map(
      async (name) => (await post(`${server.url}${seatsPath(host.code)}`, { name, seat: null })).status,
    ),
  );
  // A Cyrillic letter that looks like the Latin one.
  for (const name of ['Ines', 'In\u0435s']) await takeSeat(server, host.code, { name, seat: null });
  const response = await fetch(`${server.url}${roomPath(host.code)}`);
  const { seats } = lobbySchema.parse(await response.json());
  const names = seats.flatMap((seat) => (seat.kind === 'empty' ? [] : [seat.name]));
  return tell(
    'names with hidden or direction marks, and two more that read like “Ines”',
    '422 each; numbered',
    `${statuses.join(', ')}; ${names.join(', ')}`,
    statuses.every((status) => status === 422) && names.slice(1).every((name) => / \(\d\)$/.test(name)),
  );
}

async function manyAtOnce(server: Besieged): Promise<Finding> {
  const host = await openRoom(server);
  const claims = await Promise.all(
    Array.from({ length: 12 }, (_, n) =>
      post(`${server.url}${seatsPath(host.code)}`, { name: `Guest ${n}`, seat: null }),
    ),
  );
  const bodies = await Promise.all(claims.map(async (claim) => ({ ok: claim.ok, ...(await claim.json()) })));
  const seats = bodies.filter(({ ok }) => ok).map(({ seat }) => seat);
  return tell(
    'twelve who sit down at the same moment',
    'seats 1, 2 and 3 are each taken once',
    seats.toSorted(),
    seats.toSorted().join() === '1,2,3',
  );
}

async function headers({ url }: Besieged): Promise<Finding> {
  const response = await fetch(`${url}/healthz`, { headers: { 'x-forwarded-proto': 'https' } });
  const said = response.headers.get('strict-transport-security');
  return tell(
    'what plain HTTP says of TLS, whatever a header claims',
    'nothing',
    said ?? 'nothing',
    said === null,
  );
}

/** Each ends by itself, with a sentence that names the setting. */
async function failingStarts({ url }: Besieged): Promise<Finding[]> {
  const { port } = new URL(url);
  const starts = [
    { settings: { PORT: port }, bar: ['set PORT to a free one'] },
    {
      settings: { METRICS_PORT: 'harbour', ROOM_PER_MINUTE: '5' },
      bar: ['METRICS_PORT: must be a number', 'ROOM_PER_MINUTE: is no setting; write ROOMS_PER_MINUTE'],
    },
  ] as const;
  return Promise.all(
    starts.map(async ({ settings, bar }) => {
      const failing = startProcess(settings);
      const [code] = await failing.ended;
      const said = failing.stderr().trim();
      const stated = Object.entries(settings).map(([name, value]) => `${name}=${value}`);
      return tell(
        `a start with ${stated}`,
        `ends and says ${bar}`,
        said,
        code !== 0 && bar.every((sentence) => said.includes(sentence)),
      );
    }),
  );
}

/** More connections than there may be: the page still loads once some of them end. */
async function manyConnections({ start }: Siege): Promise<Finding> {
  const server = await start({ ...UNLIMITED, MAX_SOCKETS: '5' });
  const { hostname, port } = new URL(server.url);
  const most = 1005;
  let dropped = 0;
  const idle = Array.from({ length: most + 50 }, () => {
    const socket = connect(Number(port), hostname);
    socket.on('error', () => {});
    socket.on('close', () => dropped++);
    return socket;
  });
  while (dropped < 50) await new Promise((resolve) => setTimeout(resolve, 20));
  const refused = dropped;
  for (const socket of idle) socket.destroy();
  const { status } = await fetch(`${server.url}/healthz`);
  return tell(
    `of ${idle.length} connections to a server of 5 sockets, those dropped, and the next request`,
    '>= 50, 200',
    `${refused}, ${status}`,
    refused >= 50 && status === 200,
  );
}
