// The store in an SQLite file, held to the promises of every store.
import path from 'node:path';
import { openSqlite } from '../../server/store/sqlite.ts';
import { storeOf } from '../kit/logs.ts';
import { storeContract } from '../kit/store-contract.ts';
import { temporaryFolder } from '../kit/temporary.ts';

storeContract({
  name: 'an SQLite file',
  prepare: async () => async () => {},
  async newPlace() {
    const { folder, discard } = await temporaryFolder();
    const location = path.join(folder, 'deeper', 'quadrille.db');
    const open = async () => storeOf(openSqlite(location));
    const openSecond = async () => storeOf(openSqlite(location, 'beside'));
    return { open, openSecond, discard };
  },
});
