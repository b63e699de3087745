// A server and a driver for one measurement, both ended afterwards whatever happens.
import { temporaryFolder } from '../../kit/temporary.ts';
import { type Driver, type ServerUnderLoad, startDriver, startServer } from './processes.ts';

const OWN = ['--expose-gc', new URL('own-server.mjs', import.meta.url).pathname];

export interface UnderLoad {
  readonly server: ServerUnderLoad;
  readonly driver: Driver;
}

/** Our own server with its rooms in a file of its own. */
export async function withOwnServer<T>(run: (load: UnderLoad) => Promise<T>): Promise<T> {
  const { folder, discard } = await temporaryFolder();
  try {
    return await withServer(OWN, { DATA_DIR: folder }, run);
  } finally {
    await discard();
  }
}

export function withPeer(name: string) {
  const script = new URL(`../peers/${name}-server.mjs`, import.meta.url).pathname;
  return <T>(run: (load: UnderLoad) => Promise<T>): Promise<T> => withServer([script], {}, run);
}

async function withServer<T>(
  args: readonly string[],
  environment: Readonly<Record<string, string>>,
  run: (load: UnderLoad) => Promise<T>,
): Promise<T> {
  const server = await startServer(args, environment);
  const driver = startDriver();
  try {
    return await run({ server, driver });
  } finally {
    await driver.kill();
    await server.kill();
  }
}
