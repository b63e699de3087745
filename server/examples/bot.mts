// A whole bot, written from PROTOCOL.md alone: npx tsx bot.mts 'http://localhost:8080/t/CODE#bot=SECRET' [ROUNDS]
import { once } from 'node:events';
import { setTimeout as sleep } from 'node:timers/promises';
import { WebSocket } from 'ws';

type Stage = { phase: string; step?: string; counts?: number[] };
type View = { audience: string; stage: Stage; rack: string[]; answer: unknown; record: { steps: object[] } };
type Table = { you: number | null; round: number; view: View | null };
type Change = Partial<Table> & { viewDelta?: Partial<View> & { steps: object[] } };
class Over extends Error {}

const link = new URL(process.argv[2] ?? '');
const rounds = Number(process.argv[3] ?? Number.POSITIVE_INFINITY);
const room = `${link.origin}/api/rooms/${link.pathname.split('/').at(-1)}`;
let secret = link.hash.replace('#bot=', '');
let known: { seq: number; table: Table } | null = null;

async function post(path: string, body: object) {
  const headers = { 'content-type': 'application/json', authorization: `Bearer ${secret}` };
  const answer = await fetch(room + path, { method: 'POST', headers, body: JSON.stringify(body) });
  const json = JSON.parse(await answer.text());
  if (!answer.ok) console.error(json.message);
  if (!answer.ok) throw new (answer.status < 409 ? Over : Error)(json.message);
  secret = json.secret ?? secret;
  return json;
}

function apply(before: Table, { viewDelta, ...changes }: Change): Table {
  const table: Table = { ...before, ...changes };
  if (!viewDelta || !table.view) return table;
  const { steps, ...rest } = viewDelta;
  const record = { ...table.view.record, steps: [...table.view.record.steps, ...steps] };
  return { ...table, view: { ...table.view, ...rest, record } };
}

/** What the open step wants of this seat; null where it wants nothing. */
function choose({ you, view }: Table) {
  if (you === null || view?.audience !== 'seat' || view.answer !== null) return null;
  const { phase, step = 'courtesy-pass', counts = [] } = view.stage;
  if (phase === 'voting') return { kind: 'vote', step: 'vote', go: false };
  if (phase === 'asking') return { kind: 'ask', step: 'courtesy-ask', count: 1 };
  const count = phase === 'passing' ? 3 : phase === 'giving' ? (counts[you] ?? 0) : 0;
  const held = (face: string) => view.rack.filter((one) => one === face).length;
  const spare = view.rack.filter((face) => face !== 'joker').sort((a, b) => held(a) - held(b));
  return count > 0 ? { kind: 'pass', step, tiles: spare.slice(0, count), blind: 0 } : null;
}

function hear(socket: WebSocket, text: string) {
  const frame = JSON.parse(text);
  if (frame.kind === 'rejected') console.error(frame.code, frame.message);
  if (frame.kind !== 'table' && frame.kind !== 'delta') return;
  const before = known?.seq === frame.after ? known?.table : null;
  const table: Table | null = frame.kind === 'table' ? frame.table : before && apply(before, frame.table);
  known = table && { seq: frame.seq, table };
  if (table === null) return socket.terminate();
  const { you: seat, round, view } = table;
  if (seat === null || (view?.stage.phase === 'closed' && round >= rounds)) socket.close(4000);
  const choice = choose(table);
  const id = `${round} ${choice?.step}`; // One id a question: said again, on any connection, it counts once.
  if (choice) socket.send(JSON.stringify({ kind: 'choose', id, round, seat, choice }));
}

/** Milliseconds until the next connection; null for none. */
async function talk(): Promise<number | null> {
  if (link.hash.endsWith(secret)) await post('/bots', { name: 'Rote' }); // It is still the invitation's.
  const { ticket } = await post('/ticket', {});
  const socket = new WebSocket(`${link.origin.replace('http', 'ws')}/api/socket`);
  const resume = known ? { seq: known.seq, you: known.table.you } : undefined;
  const hello = { kind: 'hello', id: 'h', versions: [1, 1], ticket, resume };
  const silence = setTimeout(() => socket.terminate(), 45_000).unref();
  socket.on('open', () => socket.send(JSON.stringify(hello)));
  socket.on('message', () => silence.refresh());
  socket.on('message', (data) => hear(socket, `${data}`));
  socket.on('error', console.error);
  const [code, reason] = await once(socket, 'close');
  return [1001, 4000, 4003, 4004].includes(code) ? null : Number(`${reason}`) || 1000;
}

const again = (error: unknown) => (error instanceof Over ? Promise.reject(error) : 2000);
for (let pause: number | null = 0; pause !== null; pause = await talk().catch(again)) await sleep(pause);
