// What the deal and the passes brought and what the choices cost, in a few sentences; step by step for those who ask.
import type { Ledger } from '../../shared-engine/index.ts';
import { STEP_NAMES } from '../room/step-names.ts';
import { REVIEW, signed } from './strings.ts';

interface LuckAndChoicesProps {
  readonly ledger: Ledger;
  readonly sentences: readonly string[];
}

export function LuckAndChoices({ ledger: { entries }, sentences }: LuckAndChoicesProps) {
  return (
    <section class="panel luck-and-choices" aria-labelledby="ledger-title">
      <h2 id="ledger-title">{REVIEW.ledger}</h2>
      <ul>
        {sentences.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <p class="aside">{REVIEW.ledgerAbout}</p>
      <details>
        <summary>{REVIEW.numbers}</summary>
        <p class="aside">
          {REVIEW.ledgerTable} {REVIEW.ledgerBeside}
        </p>
        <table>
          <thead>
            <tr>
              <th scope="col">{REVIEW.choice}</th>
              <th scope="col">{REVIEW.ledgerWins}</th>
              <th scope="col">{REVIEW.ledgerChoice}</th>
              <th scope="col">{REVIEW.ledgerAfter}</th>
            </tr>
          </thead>
          <tbody>
            {entries.map(({ kind, step, value, choice, after, afterBy }) => (
              <tr key={`${kind}-${step}`}>
                <th scope="row">{kind === 'blind' ? REVIEW.blind(STEP_NAMES[step]) : STEP_NAMES[step]}</th>
                <td>{value.value.toFixed(1)}</td>
                <td>{signed(choice)}</td>
                <td>{afterBy === 'class' ? REVIEW.byClass(signed(after)) : signed(after)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
