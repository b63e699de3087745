// Somebody's words with the tiles that they name drawn in place.
import { Tile } from './tile.tsx';
import { partsOfText } from './tile-words.ts';

export function TileText({ text }: { readonly text: string }) {
  return (
    <>
      {partsOfText(text).map((part, place) =>
        part.kind === 'words' ? (
          part.text
        ) : (
          <span key={`${place}-${part.face}`} class="text-tile">
            <span class="spoken">{part.text}</span>
            <Tile face={part.face} small />
          </span>
        ),
      )}
    </>
  );
}
