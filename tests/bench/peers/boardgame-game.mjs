// The exchange as a game of boardgame.io: everybody moves at once, each sees the own rack alone.
import { freshRacks, passed, without } from './exchange.mjs';

const NOBODY = [null, null, null, null];

export const game = {
  name: 'exchange',
  minPlayers: 4,
  maxPlayers: 4,
  setup: () => ({ step: 0, racks: freshRacks(), passes: NOBODY }),
  turn: { activePlayers: { all: 'passing' } },
  moves: {
    pass: {
      // Four may move at once, and the outcome depends on what others passed, which a page does not know.
      client: false,
      ignoreStaleStateID: true,
      move: ({ G, playerID }, tiles) => {
        const seat = Number(playerID);
        if (G.passes[seat] !== null || without(G.racks[seat], tiles) === null) return 'INVALID_MOVE';
        const passes = G.passes.map((own, at) => (at === seat ? tiles : own));
        if (passes.includes(null)) return { ...G, passes };
        return { step: G.step + 1, racks: passed(G.racks, passes), passes: NOBODY };
      },
    },
  },
  playerView: ({ G, playerID }) => ({
    step: G.step,
    rack: playerID === null ? [] : G.racks[Number(playerID)],
    passes: G.passes.map((tiles) => tiles !== null),
  }),
};
