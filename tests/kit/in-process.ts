// The slow work of a server done in the test's own thread, on any card: what threads do in a server that runs.
import { setImmediate } from 'node:timers/promises';
import type { Cards, Drills, PlayingCard, PreparedDrill } from '../../server/ports.ts';
import { beginDrill, continueDrill } from '../../server/workers/prepare-drill.ts';
import { compileCard } from '../../shared-engine/card/compile.ts';
import { parseCard } from '../../shared-engine/card/parse.ts';
import type { Kernel } from '../../shared-engine/kernels/tiles-to-go/kernel.ts';
import { createSwarKernel } from '../../shared-engine/kernels/tiles-to-go/swar.ts';

const kernels = new Map<string, Kernel>();

export function kernelOf({ key, file }: PlayingCard): Kernel {
  const kernel = kernels.get(key) ?? createSwarKernel(compileCard(file));
  kernels.set(key, kernel);
  return kernel;
}

export const cardsInProcess: Cards = {
  async check(json) {
    await setImmediate();
    const parsed = parseCard(json);
    return parsed.ok
      ? { ok: true, choice: { kind: 'file', file: parsed.card } }
      : { ok: false, problems: parsed.problems.map(({ message }) => message) };
  },
};

export const drillsInProcess: Drills = {
  async prepare(drill, { card }) {
    await setImmediate();
    return preparedDrill(drill, kernelOf(card));
  },
};

/** All parts of a drill, one after the other. */
export function preparedDrill(json: unknown, kernel: Kernel): PreparedDrill {
  const goesOn = () => false;
  let step = beginDrill(json, kernel, goesOn);
  while (!step.isDone) step = continueDrill(step.part, kernel, goesOn);
  return step.prepared;
}
