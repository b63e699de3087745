// Faults of what many rooms store together: an answer lost with the connection, and a death while all of them are told.
import { withDatabase } from './database-faults.ts';
import { withFile } from './file-faults.ts';
import type { Scenario } from './scenario.ts';
import { pause } from './server-under-test.ts';

/** How long something is waited for that happens all the time while people play, in milliseconds. */
const PATIENCE_MS = 120_000;
/** Of fast players, so that several rooms have something to store at once. */
const BUSY = { maxThinkingMs: 60 } as const;

export const answersLost: Scenario = {
  title: 'commits carried out whose answer is lost with the connection',
  run: (input) =>
    withDatabase(input, BUSY, async ({ crowd, way }) => {
      const times = input.size === 'full' ? 60 : 4;
      for (let at = 1; at <= times; at++) {
        await pause(crowd.random.below(400));
        way.loseAnswerTo('quadrille append');
        if (!(await crowd.until(() => way.lost === at, PATIENCE_MS)))
          throw new Error('nothing was committed');
      }
      return way.lost;
    }),
};

/** A module, preloaded, that kills its process before the delta with the number in DIES_AT_DELTA leaves it. */
const DIES_WHILE_TELLING = `data:text/javascript,${encodeURIComponent(`
  import { Socket } from 'node:net';
  let left = Number(process.env.DIES_AT_DELTA ?? 0);
  const look = (chunk) => {
    if (left > 0 && chunk.includes('"kind":"delta"') && --left === 0) process.kill(process.pid, 'SIGKILL');
  };
  const { _write, _writev } = Socket.prototype;
  Socket.prototype._write = function (chunk, ...rest) {
    look(chunk);
    return _write.call(this, chunk, ...rest);
  };
  Socket.prototype._writev = function (chunks, ...rest) {
    for (const { chunk } of chunks) look(chunk);
    return _writev.call(this, chunks, ...rest);
  };`)}`;

export const halfTold: Scenario = {
  title: 'the process dies when some have been told of a commit and others have not',
  run: (input) =>
    withFile(
      input,
      BUSY,
      async ({ server, crowd }) => {
        const times = input.size === 'full' ? 60 : 3;
        let divided = 0;
        for (let at = 0; at < times; at++) {
          await server.end('SIGKILL');
          await server.start({ DIES_AT_DELTA: String(10 + crowd.random.below(60)) });
          if (!(await crowd.until(() => !server.isRunning(), PATIENCE_MS)))
            throw new Error('nobody was told');
          await pause(50);
          if (crowd.divided > 0) divided++;
        }
        await server.end('SIGKILL');
        await server.start();
        return divided;
      },
      DIES_WHILE_TELLING,
    ),
};
