// Limits of what a hand leaves open: which suits, winds, dragons or numbers it may be, one chip each.
import { useSignal } from '@preact/signals';
import {
  canonicalPattern,
  DRAGONS,
  type PatternBody,
  STANDARD_NAMES,
  SUITS,
  type TileNumber,
  variableUses,
  WINDS,
} from '../../../shared-engine/index.ts';
import { LIMITS } from './strings.ts';

const NUMBERS: readonly TileNumber[] = [1, 2, 3, 4, 5, 6, 7, 8, 9];

type Domain = NonNullable<PatternBody['where']>[string];

interface LimitsProps {
  readonly pattern: PatternBody;
  readonly onChange: (pattern: PatternBody) => void;
}

export function Limits({ pattern, onChange }: LimitsProps) {
  const isOpen = useSignal(false);
  const names = [...new Map(variableUses(pattern).map(({ name, kind }) => [name, kind]))];
  if (names.length === 0) return null;
  // There may be fifty chips, which a key typed meanwhile should not wait for while nobody sees them.
  const shown = isOpen.value ? names : [];
  return (
    <details
      class="limits"
      onToggle={(event) => {
        isOpen.value = event.currentTarget.open;
      }}
    >
      <summary>{LIMITS.title}</summary>
      <p class="about">{LIMITS.about}</p>
      {shown.map(([name, kind]) => (
        <fieldset key={name} class="row">
          <legend>
            {kind === 'number'
              ? LIMITS.number(name)
              : LIMITS.nth(kind, STANDARD_NAMES[kind].indexOf(name) + 1)}
          </legend>
          {chipsOf(pattern, name, kind).map(({ value, on, toggled }) => (
            <label key={value} class="choice pill">
              <input
                type="checkbox"
                checked={on}
                onChange={() =>
                  onChange(toggled === null ? unlimited(pattern, name) : limited(pattern, name, toggled))
                }
              />
              <span>{value === 'white' ? 'soap' : value}</span>
            </label>
          ))}
        </fieldset>
      ))}
    </details>
  );
}

interface Chip {
  readonly value: string | number;
  readonly on: boolean;
  /** The limit after a tap; null for none. */
  readonly toggled: Domain | null;
}

function chipsOf(pattern: PatternBody, name: string, kind: keyof typeof STANDARD_NAMES): Chip[] {
  const domain = pattern.where?.[name];
  switch (kind) {
    case 'suit':
      return chips(SUITS, domain && 'suits' in domain ? domain.suits : SUITS, (suits) => ({ suits }));
    case 'wind':
      return chips(WINDS, domain && 'winds' in domain ? domain.winds : WINDS, (winds) => ({ winds }));
    case 'dragon':
      return chips(DRAGONS, domain && 'dragons' in domain ? domain.dragons : DRAGONS, (dragons) => ({
        dragons,
      }));
    case 'number': {
      const steps = variableUses(pattern).filter((use) => use.name === name);
      const possible = NUMBERS.filter((n) => steps.every(({ plus }) => n + plus >= 1 && n + plus <= 9));
      return chips(
        possible,
        possible.filter((n) => allows(domain, n)),
        (numbers) => ({ numbers }),
      );
    }
  }
}

function allows(domain: Domain | undefined, number: TileNumber): boolean {
  if (domain === undefined) return true;
  if ('from' in domain) return number >= domain.from && number <= domain.to;
  return 'numbers' in domain && domain.numbers.includes(number);
}

/** The last one that is left cannot be taken away. */
function chips<T extends string | number>(
  all: readonly T[],
  on: readonly T[],
  domainOf: (values: T[]) => Domain,
): Chip[] {
  return all.map((value) => {
    const isOn = on.includes(value);
    const next = all.filter((other) => (other === value ? !isOn : on.includes(other)));
    const kept = next.length === 0 ? [value] : next;
    return { value, on: isOn, toggled: kept.length === all.length ? null : domainOf(kept) };
  });
}

function limited(pattern: PatternBody, name: string, domain: Domain): PatternBody {
  return canonicalPattern({ ...pattern, where: { ...pattern.where, [name]: domain } });
}

function unlimited({ where, ...rest }: PatternBody, name: string): PatternBody {
  const others = Object.entries(where ?? {}).filter(([other]) => other !== name);
  return canonicalPattern(others.length === 0 ? rest : { ...rest, where: Object.fromEntries(others) });
}
