// Bare sockets in memory: rooms by number, frames of JSON, no checks but those of the exchange.
import { WebSocketServer } from 'ws';
import { Exchange } from './exchange.mjs';

const rooms = new Map();
const server = new WebSocketServer({ host: '127.0.0.1', port: 0, perMessageDeflate: false });

server.on('connection', (socket, request) => {
  const [, number, seatText] = request.url.split('/');
  const seat = Number(seatText);
  let room = rooms.get(number);
  if (!room) {
    room = { exchange: new Exchange(), seats: [null, null, null, null] };
    rooms.set(number, room);
  }
  const { exchange, seats } = room;
  seats[seat] = socket;
  const tell = (to) => seats[to].send(JSON.stringify(exchange.resultFor(to)));
  if (!seats.includes(null)) for (const to of [0, 1, 2, 3]) tell(to);
  socket.on('message', (data) => {
    const { id, tiles } = JSON.parse(data.toString());
    socket.send(JSON.stringify({ kind: 'ack', id }));
    if (exchange.seal(seat, tiles)) for (const to of [0, 1, 2, 3]) tell(to);
  });
});

server.on('listening', () => console.log(`http://127.0.0.1:${server.address().port}`));
