// The exchange on a server of boardgame.io with its store in memory.
import { createRequire } from 'node:module';
import { game } from './boardgame-game.mjs';

const { Server, Origins } = createRequire(import.meta.url)('boardgame.io/server');
const server = Server({ games: [game], origins: [Origins.LOCALHOST] });
// The framework writes a line for each start and for every move it rejects.
const say = console.log;
console.log = () => {};
const { appServer } = await server.run({ port: 0 });
say(`http://127.0.0.1:${appServer.address().port}`);
