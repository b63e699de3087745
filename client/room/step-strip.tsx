// Where the round stands, as a row of steps.
import { type ExchangeTerms, hasStep, MOVES, type Step } from '../../shared-engine/index.ts';
import { STRIP_STEPS, stepState } from './step-names.ts';
import { ROOM } from './strings.ts';

interface StepStripProps {
  /** Null once the round is closed. */
  readonly open: Step | null;
  readonly stopped: boolean;
  readonly terms: ExchangeTerms;
}

export function StepStrip({ open, stopped, terms }: StepStripProps) {
  const steps = STRIP_STEPS.filter(({ step }) => hasStep(step, terms));
  return (
    <ol class="step-strip" aria-label={ROOM.steps}>
      {steps.map(({ step, label, part }, index) => {
        const state = stepState(step, open, stopped);
        return (
          <li key={step} class={`step ${state}`} aria-current={state === 'now' ? 'step' : undefined}>
            {part !== steps[index - 1]?.part && (
              <span class={part === steps[index + 1]?.part ? 'part' : 'part alone'}>{part}</span>
            )}
            <span class="step-label">
              <StepArrow step={step} />
              <span class="step-word">{label}</span>
            </span>
            <span class="spoken">{state === 'now' ? '' : `, ${state}`}</span>
          </li>
        );
      })}
    </ol>
  );
}

const TURNS = { right: 90, across: 0, left: 270 } as const;

/** Points from one's own rack to the seat that gets the tiles; the vote and the courtesy have signs of their own. */
export function StepArrow({ step }: { readonly step: Step }) {
  if (step === 'vote' || step === 'courtesy-ask') {
    return (
      <svg class="arrow" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
        {step === 'vote' ? (
          <path d="M4 10 L8.500 15 L16 5" />
        ) : (
          <path d="M7 17 V4 M3.500 7.500 L7 4 L10.500 7.500 M13 3 V16 M9.500 12.500 L13 16 L16.500 12.500" />
        )}
      </svg>
    );
  }
  return (
    <svg class="arrow" viewBox="0 0 20 20" aria-hidden="true" focusable="false">
      <path
        d="M10 17 V4 M4.500 9 L10 3.500 L15.500 9"
        transform={`rotate(${TURNS[MOVES[step].toward]} 10 10)`}
      />
    </svg>
  );
}
