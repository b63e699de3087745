// The exchange in rooms of Colyseus, in memory; each pass is acknowledged, each result told to its seat.
import { Room, Server } from '@colyseus/core';
import { WebSocketTransport } from '@colyseus/ws-transport';
import { Exchange } from './exchange.mjs';

class Table extends Room {
  maxClients = 4;
  #exchange = new Exchange();
  #seats = [];

  onCreate() {
    this.setPatchRate(null);
    this.onMessage('pass', (client, { id, tiles }) => {
      client.send('ack', { id });
      if (this.#exchange.seal(this.#seats.indexOf(client), tiles)) this.#tell();
    });
    // A seat says that it listens before it is told anything.
    let ready = 0;
    this.onMessage('ready', () => {
      if (++ready === 4) this.#tell();
    });
  }

  onJoin(client) {
    this.#seats.push(client);
  }

  #tell() {
    for (const [seat, client] of this.#seats.entries()) client.send('result', this.#exchange.resultFor(seat));
  }
}

const transport = new WebSocketTransport({ perMessageDeflate: false });
const server = new Server({ transport, greet: false });
server.define('table', Table);
await server.listen(0, '127.0.0.1');
console.log(`http://127.0.0.1:${transport.server.address().port}`);
