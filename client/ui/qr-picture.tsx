// The link as a square code for a camera; the code for drawing it is fetched when it is shown.
import { useEffect, useState } from 'preact/hooks';
import type { QrCode } from './qr-code.ts';
import { QR } from './strings.ts';

interface QrPictureProps {
  readonly link: string;
  /** What the picture is, and what to do with it; as for a table where left out. */
  readonly about?: string;
  readonly caption?: string;
}

export function QrPicture({ link, about = QR.about, caption = QR.caption }: QrPictureProps) {
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
        aria-label={about}
        shape-rendering="crispEdges"
      >
        {code && <path d={code.path} />}
      </svg>
      <figcaption>{caption}</figcaption>
    </figure>
  );
}
