// The numbers behind the deep analysis, for those who ask for them.
import {
  type ChoiceReview,
  type ChoiceStory,
  type DeepAnalysis,
  type MeasuredValue,
  toldVerdict,
} from '../../shared-engine/index.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { withInterval } from '../ui/numbers.ts';
import { DEEP, finalistName, pointsSentence } from './deep-strings.ts';
import { REVIEW } from './strings.ts';

interface DeepNumbersProps {
  readonly kind: ChoiceReview['kind'];
  readonly analysis: DeepAnalysis;
  readonly rows: ChoiceStory['rows'];
}

export function DeepNumbers({ kind, analysis, rows }: DeepNumbersProps) {
  const { finalists, played, bestAlternative, why } = analysis;
  const gives = finalists.some(({ giveaway }) => giveaway !== null);
  return (
    <details class="panel">
      <summary>{REVIEW.numbers}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{REVIEW.choice}</th>
            <th scope="col">{DEEP.wins}</th>
            <th scope="col">{DEEP.difference}</th>
            {gives && <th scope="col">{DEEP.giveaway}</th>}
          </tr>
        </thead>
        <tbody>
          {rows
            .map((place) => [place, finalists[place]!] as const)
            .map(([place, one]) => (
              <tr key={`${one.tiles.join()}${one.number}`} class={place === played ? 'mine' : ''}>
                <th scope="row">
                  {kind === 'pass' ? <TileRow tiles={one.tiles} /> : finalistName(kind, one)}
                  {place === played && <span class="tag">{DEEP.you}</span>}
                  {place === bestAlternative && (
                    <span class="tag">{DEEP.bestAlternative[toldVerdict(analysis)]}</span>
                  )}
                </th>
                <td>{measured(one.winProbability, false)}</td>
                <td>{place === played ? '–' : measured(one.difference, true)}</td>
                {gives && <td>{one.giveaway ? measured(one.giveaway, true) : '–'}</td>}
              </tr>
            ))}
        </tbody>
      </table>
      {why && <p>{pointsSentence(why.points)}</p>}
    </details>
  );
}

function measured({ value, halfWidth }: MeasuredValue, signed: boolean): string {
  return withInterval(value, halfWidth, signed);
}
