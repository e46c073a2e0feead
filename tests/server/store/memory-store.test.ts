import { emptyMemory, memoryStore } from '../../../server/store/memory-store.ts';
import { keyContract, storeContract } from '../../support/store-contract.ts';

storeContract('memory', () => {
  const memory = emptyMemory();
  return {
    open: async () => memoryStore(memory),
    openAgain: async () => memoryStore(memory),
    cleanUp: async () => {},
  };
});

keyContract('memory', async () => memoryStore());
