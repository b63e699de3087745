// The ways to play that this browser remembers for tables opened here; a text that nobody could have chosen counts as usual.
import {
  BOT_PACES,
  CARD_HELP_WAYS,
  COURTESY_WAYS,
  EAST_WAYS,
  type Mode,
  SECOND_CHARLESTON_WAYS,
  STANDARD_TERMS,
  type Terms,
} from '../../shared-engine/index.ts';

/** Seconds that may be chosen for a step. */
export const DEADLINES = [null, 30, 60, 120, 300] as const;

const VALUES: { readonly [K in keyof Terms]: readonly Terms[K][] } = {
  whoIsEast: EAST_WAYS,
  secondCharleston: SECOND_CHARLESTON_WAYS,
  blindPasses: [true, false],
  courtesy: COURTESY_WAYS,
  deadline: DEADLINES,
  botPace: BOT_PACES,
  cardHelp: CARD_HELP_WAYS,
  passLog: [true, false],
  revealRacks: [true, false],
};

const WAY_NAMES = Object.keys(VALUES).filter((name): name is keyof Terms => name in VALUES);

export function readWays(text: string | null, mode: Mode): Terms {
  const stored = recordOf(text);
  let terms: Terms = STANDARD_TERMS[mode];
  for (const name of WAY_NAMES) {
    const value = VALUES[name].find((known) => known === stored[name]);
    if (value !== undefined) terms = { ...terms, [name]: value };
  }
  return terms;
}

function recordOf(text: string | null): Readonly<Record<string, unknown>> {
  try {
    const json: unknown = JSON.parse(text ?? '{}');
    return typeof json === 'object' && json !== null ? { ...json } : {};
  } catch {
    return {};
  }
}
