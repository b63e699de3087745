// The link as a square code for a camera; the code for drawing it is fetched when it is shown.
import { useEffect, useState } from 'preact/hooks';
import type { QrCode } from './qr-code.ts';
import { QR } from './strings.ts';

export function QrPicture({ link }: { readonly link: string }) {
  const [code, setCode] = useState<QrCode | null>(null);
  useEffect(() => {
    let wanted = true;
    // Without it there are still the link and the code.
    import('./qr-code.ts').then(
      ({ qrCodeOf }) => wanted && setCode(qrCodeOf(link)),
      (error: unknown) => console.warn(error),
    );
    return () => {
      wanted = false;
    };
  }, [link]);
  return (
    <figure class="scan">
      <svg
        viewBox={code ? `0 0 ${code.side} ${code.side}` : '0 0 1 1'}
        role="img"
        aria-label={QR.about}
        shape-rendering="crispEdges"
      >
        {code && <path d={code.path} />}
      </svg>
      <figcaption>{QR.caption}</figcaption>
    </figure>
  );
}
