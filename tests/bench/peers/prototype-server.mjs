// The least that is durable: bare sockets and one table in SQLite; nothing is acknowledged or told before it is on disk.
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import Database from 'better-sqlite3';
import { WebSocketServer } from 'ws';
import { Exchange } from './exchange.mjs';

const folder = mkdtempSync(path.join(tmpdir(), 'quadrille-prototype-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
process.stdin.on('end', () => process.exit()).resume();

const file = new Database(path.join(folder, 'prototype.db'));
file.exec('PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL');
file.exec('CREATE TABLE pass (room TEXT NOT NULL, seat INTEGER NOT NULL, body TEXT NOT NULL)');
const insert = file.prepare('INSERT INTO pass VALUES (?, ?, ?)');
const store = file.transaction((passes) => {
  for (const { number, seat, text } of passes) insert.run(number, seat, text);
});

const rooms = new Map();
let waiting = [];
const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false });

/** All passes of a turn are one commit; then they are acknowledged, and who has a result is told it. */
function commit() {
  const passes = waiting;
  waiting = [];
  store.immediate(passes);
  for (const { socket, room, seat, text } of passes) {
    const { id, tiles } = JSON.parse(text);
    socket.send(JSON.stringify({ kind: 'ack', id }));
    if (room.exchange.seal(seat, tiles)) tell(room);
  }
}

function tell({ exchange, seats }) {
  for (const to of [0, 1, 2, 3]) seats[to].send(JSON.stringify(exchange.resultFor(to)));
}

server.on('connection', (socket, request) => {
  const [, number, seatText] = request.url.split('/');
  const seat = Number(seatText);
  const room = rooms.get(number) ?? { exchange: new Exchange(), seats: [null, null, null, null] };
  rooms.set(number, room);
  room.seats[seat] = socket;
  if (!room.seats.includes(null)) tell(room);
  socket.on('message', (data) => {
    if (waiting.length === 0) setImmediate(commit);
    waiting.push({ socket, room, number, seat, text: data.toString() });
  });
});

server.on('listening', () => console.log(`http://127.0.0.1:${server.address().port}`));
