// What wake-ups between servers cost, measured on a PostgreSQL, and what that comes to for many servers, simulated.
import type { Bench, Figures } from '../bench.ts';
import { rounded } from '../rooms/side-by-side.ts';
import { type Heard, hearWakes } from '../scale/simulated-wakes.ts';
import { type Costs, wakeCosts } from '../scale/wake-costs.ts';

/** As often as a server asks for the versions of what is active there, in a second. */
const POLLS = 4;
const TABLES = 100_000;
const SERVERS = [4, 16, 64] as const;
/** The share of a core that a server may give to hearing others. */
const SHARE = 0.1;

export const bench: Bench = {
  summary: 'Processor time of a wake-up and of asking for versions; simulated, what 100,000 tables come to.',
  async run({ seed, size }) {
    const costs = await wakeCosts(size);
    return { ...figuresOf(costs), ...simulated(costs, seed, size === 'full' ? 10 : 1) };
  },
};

function figuresOf({ message, wake, notify, delivery, poll, databasePoll, sweep }: Costs): Figures {
  return {
    message_us: rounded(message),
    wake_us: rounded(wake),
    notify_database_us: rounded(notify),
    delivery_database_us: rounded(delivery),
    poll_us: rounded(poll),
    poll_database_us: rounded(databasePoll),
    sweep_database_us: rounded(sweep),
  };
}

function simulated(costs: Costs, seed: string, seconds: number): Figures {
  return Object.assign(
    {},
    ...SERVERS.map((servers): Figures => {
      const evening = { servers, tables: TABLES, seconds, seed };
      const together = hearWakes({ ...evening, together: true });
      const spread = hearWakes({ ...evening, together: false });
      const unpaused = hearWakes({ ...evening, together: true, pauseMs: 0 });
      return {
        [`messages_per_s_${servers}`]: Math.round(together.messages),
        [`wakes_per_s_${servers}`]: Math.round(together.wakes),
        [`spread_loads_per_s_${servers}`]: Math.round(spread.loads),
        [`hearing_cores_${servers}`]: rounded(hearing(together, costs)),
        [`polling_cores_${servers}`]: rounded((POLLS * costs.poll * TABLES) / servers / 1e6),
        [`database_wake_cores_${servers}`]: rounded(sending(together, servers, costs)),
        [`unpaused_hearing_cores_${servers}`]: rounded(hearing(unpaused, costs)),
        [`unpaused_database_wake_cores_${servers}`]: rounded(sending(unpaused, servers, costs)),
        [`database_poll_cores_${servers}`]: rounded((POLLS * costs.databasePoll * TABLES) / 1e6),
        [`tables_at_a_tenth_of_a_core_${servers}`]: tablesAt(SHARE, { servers, costs, seed }),
      };
    }),
  );
}

/** Cores of one server that hearing takes. */
function hearing({ messages, wakes }: Heard, { message, wake }: Costs): number {
  return (messages * message + wakes * wake) / 1e6;
}

/** Cores of the database that sending takes. */
function sending({ messages }: Heard, servers: number, { notify, delivery }: Costs): number {
  return (messages * (notify + delivery * servers)) / 1e6;
}

/** How many tables there are in all when hearing of them takes this share of a core at every server, to a hundredth. */
function tablesAt(
  share: number,
  { servers, costs, seed }: { readonly servers: number; readonly costs: Costs; readonly seed: string },
): number {
  const isBelow = (tables: number) =>
    hearing(hearWakes({ servers, tables, together: true, seconds: 1, seed }), costs) < share;
  let [low, high] = [0, 10_000];
  while (high < 5_000_000 && isBelow(high)) [low, high] = [high, 2 * high];
  while (high - low > high / 100) {
    const middle = Math.round((low + high) / 2);
    if (isBelow(middle)) low = middle;
    else high = middle;
  }
  return low;
}
