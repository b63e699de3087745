// The card as it is printed: every section with its hands in tiles and in one line; on the screen it is not shown.

import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import { type CardFile, exampleOf, writeShorthand } from '../../../shared-engine/index.ts';
import { TileRow } from '../../tiles/tile-row.tsx';

export function PrintedCard({ card }: { readonly card: CardFile }) {
  // Thousands of tiles are drawn only while somebody prints.
  const printing = useSignal(false);
  useEffect(() => {
    const media = window.matchMedia('print');
    const follow = () => {
      printing.value = media.matches;
    };
    media.addEventListener('change', follow);
    return () => media.removeEventListener('change', follow);
  }, [printing]);
  if (!printing.value) return null;
  return (
    <div class="printed-card" aria-hidden="true">
      <h1>{card.name}</h1>
      {card.sections.map(({ id, name }) => (
        <section key={id}>
          <h2>{name}</h2>
          <ol>
            {card.patterns
              .filter(({ section }) => section === id)
              .map((pattern) => (
                <li key={pattern.id}>
                  <TileRow
                    tiles={
                      exampleOf(pattern, card.parameters, pattern.id)?.faces.flatMap((face, nth) =>
                        new Array(pattern.groups[nth]!.size).fill(face),
                      ) ?? []
                    }
                  />
                  <span>{writeShorthand(pattern)}</span>
                </li>
              ))}
          </ol>
        </section>
      ))}
    </div>
  );
}
