// The figures behind the deeper judgement, for those who ask for them.
import type { ChoiceReview, DeepJudgement } from '../../shared-engine/index.ts';
import { TileRow } from '../tiles/tile-row.tsx';
import { finalistName, JUDGEMENT, measuredFigure } from './deep-strings.ts';
import { REVIEW } from './strings.ts';

interface DeepNumbersProps {
  readonly kind: ChoiceReview['kind'];
  readonly judgement: DeepJudgement;
}

export function DeepNumbers({ kind, judgement }: DeepNumbersProps) {
  const { finalists, played, rival } = judgement;
  const gives = finalists.some(({ gift }) => gift !== null);
  return (
    <details class="panel">
      <summary>{REVIEW.numbers}</summary>
      <table>
        <thead>
          <tr>
            <th scope="col">{REVIEW.choice}</th>
            <th scope="col">{JUDGEMENT.own}</th>
            <th scope="col">{JUDGEMENT.ahead}</th>
            {gives && <th scope="col">{JUDGEMENT.gift}</th>}
          </tr>
        </thead>
        <tbody>
          {finalists.map((one, place) => (
            <tr key={`${one.tiles.join()}${one.number}`} class={place === played ? 'mine' : ''}>
              <th scope="row">
                {kind === 'pass' ? <TileRow tiles={one.tiles} /> : finalistName(kind, one)}
                {place === played && <span class="tag">{JUDGEMENT.you}</span>}
                {place === rival && <span class="tag">{JUDGEMENT.rival[judgement.verdict]}</span>}
              </th>
              <td>{measuredFigure(one.outlook, false)}</td>
              <td>{place === played ? '–' : measuredFigure(one.ahead, true)}</td>
              {gives && <td>{one.gift ? measuredFigure(one.gift, true) : '–'}</td>}
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}
