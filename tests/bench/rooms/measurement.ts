// A server and a driver for one measurement, both ended afterwards whatever happens.
import { temporaryFolder } from '../../kit/temporary.ts';
import { type Driver, SERVER_CORE, type ServerUnderLoad, startDriver, startServer } from './processes.ts';

const OWN = ['--expose-gc', new URL('own-server.mjs', import.meta.url).pathname];

export interface UnderLoad {
  readonly server: ServerUnderLoad;
  readonly driver: Driver;
}

interface OwnServer {
  /** Where it makes reviews as well. */
  readonly reviews?: boolean;
  /** Where its rooms are in this PostgreSQL instead. */
  readonly database?: string;
  readonly core?: number;
}

/** Our own server with its rooms in a file of its own, or in a database. */
export async function withOwnServer<T>(
  run: (load: UnderLoad) => Promise<T>,
  { reviews = false, database = '', core = SERVER_CORE }: OwnServer = {},
): Promise<T> {
  const { folder, discard } = await temporaryFolder();
  const started = { args: [...OWN, ...(reviews ? ['reviews'] : [])], core };
  try {
    return await withServer({ ...started, environment: { DATA_DIR: folder, DATABASE_URL: database } }, run);
  } finally {
    await discard();
  }
}

export function withPeer(name: string) {
  const script = new URL(`../peers/${name}-server.mjs`, import.meta.url).pathname;
  return <T>(run: (load: UnderLoad) => Promise<T>): Promise<T> =>
    withServer({ args: [script], environment: {}, core: SERVER_CORE }, run);
}

interface Started {
  readonly args: readonly string[];
  readonly environment: Readonly<Record<string, string>>;
  readonly core: number;
}

async function withServer<T>(
  { args, environment, core }: Started,
  run: (load: UnderLoad) => Promise<T>,
): Promise<T> {
  const server = await startServer(args, environment, core);
  const driver = startDriver();
  try {
    return await run({ server, driver });
  } finally {
    await driver.kill();
    await server.kill();
  }
}

/** Bytes the server holds after everything else was collected: its heap and the buffers beside it. */
export async function memoryOf(server: ServerUnderLoad): Promise<number> {
  const { heapUsed, external }: { heapUsed: number; external: number } = JSON.parse(
    (await server.ask('memory')).replace('memory ', ''),
  );
  return heapUsed + external;
}
