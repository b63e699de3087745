// The exchange as a game of boardgame.io: everybody moves at once, each sees the own rack alone.
import { freshRacks, passed, without } from './exchange.mjs';

const NOBODY = [null, null, null, null];

export const game = {
  name: 'exchange',
  minPlayers: 4,
  maxPlayers: 4,
  setup: () => ({ step: 0, racks: freshRacks(), sealed: NOBODY }),
  turn: { activePlayers: { all: 'passing' } },
  moves: {
    pass: {
      // Four may move at once, and the outcome depends on what others passed, which a page does not know.
      client: false,
      ignoreStaleStateID: true,
      move: ({ G, playerID }, tiles) => {
        const seat = Number(playerID);
        if (G.sealed[seat] !== null || without(G.racks[seat], tiles) === null) return 'INVALID_MOVE';
        const sealed = G.sealed.map((own, at) => (at === seat ? tiles : own));
        if (sealed.includes(null)) return { ...G, sealed };
        return { step: G.step + 1, racks: passed(G.racks, sealed), sealed: NOBODY };
      },
    },
  },
  playerView: ({ G, playerID }) => ({
    step: G.step,
    rack: playerID === null ? [] : G.racks[Number(playerID)],
    sealed: G.sealed.map((tiles) => tiles !== null),
  }),
};
