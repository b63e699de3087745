// Four seats of a room at the bare sockets, as the driver plays them.
import { WebSocket } from 'ws';

let rooms = 0;

export async function openTable(url, seats) {
  const number = ++rooms;
  return Promise.all(
    seats.map(async (events, seat) => {
      const socket = new WebSocket(`${url.replace('http', 'ws')}/${number}/${seat}`, {
        perMessageDeflate: false,
      });
      let rack = [];
      socket.on('message', (data) => {
        const message = JSON.parse(data.toString());
        rack = message.rack;
        events.told(message.step > 0);
        events.asked();
      });
      await new Promise((resolve, reject) => socket.on('open', resolve).on('error', reject));
      return {
        answer: () => socket.send(JSON.stringify({ kind: 'pass', tiles: rack.slice(0, 3) })),
        close: () => socket.terminate(),
      };
    }),
  );
}
