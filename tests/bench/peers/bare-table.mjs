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
      let [rack, ids] = [[], 0];
      const unanswered = new Set();
      socket.on('message', (data) => {
        const message = JSON.parse(data.toString());
        if (message.kind === 'ack') return unanswered.delete(message.id);
        rack = message.rack;
        events.told(message.step > 0);
        events.asked();
      });
      await new Promise((resolve, reject) => socket.on('open', resolve).on('error', reject));
      return {
        answer() {
          const id = `c${++ids}`;
          unanswered.add(id);
          socket.send(JSON.stringify({ kind: 'pass', id, tiles: rack.slice(0, 3) }));
        },
        close: () => socket.terminate(),
      };
    }),
  );
}
