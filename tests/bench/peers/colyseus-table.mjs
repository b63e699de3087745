// Four seats of a Colyseus room, as the driver plays them with the framework's own client.
import { Client } from 'colyseus.js';

export async function openTable(url, seats) {
  const client = new Client(url.replace('http', 'ws'));
  const first = await client.create('table');
  const rooms = [first];
  for (let seat = 1; seat < 4; seat++) rooms.push(await client.joinById(first.roomId));
  return rooms.map((room, seat) => {
    let [rack, ids] = [[], 0];
    const unanswered = new Set();
    room.onMessage('ack', ({ id }) => unanswered.delete(id));
    room.onMessage('result', (message) => {
      rack = message.rack;
      seats[seat].told(message.step > 0);
      seats[seat].asked();
    });
    room.send('ready');
    return {
      answer() {
        const id = `c${++ids}`;
        unanswered.add(id);
        room.send('pass', { id, tiles: rack.slice(0, 3) });
      },
      close: () => room.connection.close(),
    };
  });
}
