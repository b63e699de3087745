// The invitation as a picture for a camera; fetched when an invitation is shown.
import { useEffect, useState } from 'preact/hooks';
import { LOBBY } from '../room/strings.ts';
import type { Squares } from './qr-code.ts';

export function Scan({ link }: { readonly link: string }) {
  const [squares, setSquares] = useState<Squares | null>(null);
  useEffect(() => {
    let wanted = true;
    // Without it there are still the link and the code.
    import('./qr-code.ts').then(
      ({ squaresOf }) => wanted && setSquares(squaresOf(link)),
      (error: unknown) => console.warn(error),
    );
    return () => {
      wanted = false;
    };
  }, [link]);
  return (
    <figure class="scan">
      <svg
        viewBox={squares ? `0 0 ${squares.side} ${squares.side}` : '0 0 1 1'}
        role="img"
        aria-label={LOBBY.scanAbout}
        shape-rendering="crispEdges"
      >
        {squares && <path d={squares.path} />}
      </svg>
      <figcaption>{LOBBY.scan}</figcaption>
    </figure>
  );
}
