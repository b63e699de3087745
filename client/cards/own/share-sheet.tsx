// A card shared: as a link that holds all of it, as a square code where that fits, as a file.
import { useSignal } from '@preact/signals';
import { useEffect } from 'preact/hooks';
import type { CardFile } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { CopyLink } from '../../room/copy-link.tsx';
import { QrPicture } from '../../ui/qr-picture.tsx';
import { Sheet } from '../../ui/sheet.tsx';
import { MAY_SHARE } from '../../ui/strings.ts';
import { packCard, saveCard } from './card-transfer.ts';
import { MY_CARDS, SHARE } from './strings.ts';

/** Letters that a camera still reads from a screen; the densest code would hold 2,331. */
const MAX_SCANNED = 1_200;

interface ShareSheetProps {
  readonly app: App;
  readonly card: CardFile;
  /** Whether somebody has said already that this card may be passed on. */
  readonly mayShare: boolean;
  readonly onMayShare: () => void;
  readonly onClose: () => void;
}

/** Asks once for each card whether it may be passed on. */
export function ShareSheet({ app, card, mayShare, onMayShare, onClose }: ShareSheetProps) {
  const may = useSignal(mayShare);
  return (
    <Sheet title={SHARE.title(card.name)} onClose={onClose}>
      {may.value ? (
        <Ways app={app} card={card} />
      ) : (
        <>
          <p class="notice">{MAY_SHARE.question(card.name)}</p>
          <button
            type="button"
            class="primary"
            onClick={() => {
              may.value = true;
              onMayShare();
            }}
          >
            {MAY_SHARE.yes}
          </button>
        </>
      )}
    </Sheet>
  );
}

function Ways({ app, card }: Pick<ShareSheetProps, 'app' | 'card'>) {
  const link = useSignal<string | null>(null);
  useEffect(() => {
    let wanted = true;
    void packCard(card).then((packed) => {
      if (wanted) link.value = app.linkTo({ kind: 'card-link', packed });
    });
    return () => {
      wanted = false;
    };
  }, [app, card, link]);
  return (
    <>
      <section>
        <p>{SHARE.about}</p>
        {link.value !== null && (
          <>
            <CopyLink link={link.value} label={SHARE.link} copied={SHARE.copied} />
            {link.value.length <= MAX_SCANNED ? (
              <QrPicture link={link.value} about={SHARE.scanAbout} caption={SHARE.scan} />
            ) : (
              <p class="about">{SHARE.tooLarge}</p>
            )}
          </>
        )}
      </section>
      <button type="button" onClick={() => saveCard(card)}>
        {MY_CARDS.file}
      </button>
    </>
  );
}
