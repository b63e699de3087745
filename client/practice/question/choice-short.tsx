// A choice in a few words, or as the tiles that it passes.
import type { AnswerChoice } from '../../../shared-engine/index.ts';
import { optionName } from '../../room/step-names.ts';
import { TileRow } from '../../tiles/tile-row.tsx';

export function ChoiceShort({ choice }: { readonly choice: AnswerChoice }) {
  switch (choice.kind) {
    case 'pass':
      return (
        <>
          <TileRow tiles={choice.tiles} />
          {choice.blind > 0 && ` ${optionName('blind', choice.blind)}`}
        </>
      );
    case 'vote':
      return <span>{optionName('vote', choice.go ? 1 : 0)}</span>;
    case 'ask':
      return <span>{optionName('ask', choice.count)}</span>;
  }
}
