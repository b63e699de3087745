// npm run prove -- simulator: seeds with every fault and every seeded bug, on two simulated servers with four people.
import { SEEDED_BUGS } from '../../simulator/seeded-bugs.ts';
import { simulate } from '../../simulator/simulation.ts';
import type { Proof, ProofRow } from '../proof.ts';

/** Seeds after which a seeded bug counts as not caught. */
const MAX_SEEDS = 40;

export const proof: Proof = {
  summary: 'A simulated evening holds under every seed, and every seeded bug is caught.',
  async run({ seed, size }) {
    const count = size === 'full' ? 3000 : 200;
    const failing: string[] = [];
    const sums = { choices: 0, faults: 0 };
    for (let at = 0; at < count; at++) {
      const named = `${seed}/${at}`;
      const { violations, choices, faults } = await simulate(named);
      sums.choices += choices;
      sums.faults += faults;
      if (violations.length > 0) failing.push(`${named}: ${violations[0]}`);
    }
    return [
      { what: 'seeds', value: count, bar: size === 'full' ? '>= 500' : 'reported', ok: true },
      { what: 'choices made', value: sums.choices, bar: '>= 20 a seed', ok: sums.choices >= 20 * count },
      { what: 'faults met', value: sums.faults, bar: '>= 4 a seed', ok: sums.faults >= 4 * count },
      {
        what: 'seeds under which something broke',
        value: failing.slice(0, 5).join('; ') || 0,
        bar: '0',
        ok: failing.length === 0,
      },
      await repeatRow(`${seed}/0`),
      ...(await seededBugRows(seed)),
    ];
  },
};

async function repeatRow(seed: string): Promise<ProofRow> {
  const [one, other] = [await simulate(seed), await simulate(seed)];
  const ok = one.trace === other.trace;
  return { what: 'the same seed twice gives the same evening', value: ok, bar: 'true', ok };
}

async function seededBugRows(seed: string): Promise<ProofRow[]> {
  const rows: ProofRow[] = [];
  for (const [name, assembly] of Object.entries(SEEDED_BUGS)) {
    let caught: string | null = null;
    for (let at = 0; at < MAX_SEEDS && caught === null; at++) {
      const { violations } = await simulate(`${seed}/planted/${at}`, assembly);
      if (violations[0] !== undefined) caught = `seed ${at}: ${violations[0]}`;
    }
    rows.push({
      what: `seeded bug: ${name}`,
      value: caught ?? 'not caught',
      bar: `caught within ${MAX_SEEDS} seeds`,
      ok: caught !== null,
    });
  }
  return rows;
}
