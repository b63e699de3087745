// The store in memory, held to the promises of every store.
import { type MemoryPlace, memoryStore } from '../../server/store/memory.ts';
import { storeContract } from '../kit/store-contract.ts';

storeContract({
  name: 'memory',
  prepare: async () => async () => {},
  async newPlace() {
    const place: MemoryPlace = new Map();
    return { open: async () => memoryStore(place), openSecond: null, discard: async () => {} };
  },
});
