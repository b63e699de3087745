// Four seats of a match of boardgame.io, as the driver plays them with the framework's own client.
import { createRequire } from 'node:module';
import { game } from './boardgame-game.mjs';

const require = createRequire(import.meta.url);
const { Client } = require('boardgame.io/client');
const { SocketIO } = require('boardgame.io/multiplayer');

let matches = 0;

export async function openTable(url, seats) {
  const matchID = `match-${++matches}`;
  return Promise.all(
    seats.map(async (events, seat) => {
      const multiplayer = SocketIO({ server: url, socketOpts: { transports: ['websocket'] } });
      const client = Client({
        game,
        numPlayers: 4,
        matchID,
        playerID: String(seat),
        multiplayer,
        debug: false,
      });
      let step = null;
      let rack = [];
      const synced = new Promise((resolve) => {
        client.subscribe((state) => {
          if (state === null || state.G.step === step) return;
          const first = step === null;
          ({ step, rack } = state.G);
          if (first) return resolve();
          events.told(true);
          events.asked();
        });
      });
      client.start();
      await synced;
      return {
        answer: () => client.moves.pass(rack.slice(0, 3)),
        close: () => client.stop(),
        begin: events.asked,
      };
    }),
  ).then((lines) => {
    for (const line of lines) line.begin();
    return lines;
  });
}
