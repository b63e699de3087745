// The link and the code that bring friends to the table.
import { QrPicture } from '../ui/qr-picture.tsx';
import { CopyLink } from './copy-link.tsx';
import { LOBBY } from './strings.ts';

export function Invite({ link, code }: { readonly link: string; readonly code: string }) {
  return (
    <section class="invite">
      <div class="invite-words">
        <h2>{LOBBY.inviteTitle}</h2>
        <p>{LOBBY.inviteAbout}</p>
        <p class="big-code" data-code={code}>
          {/* Spaced letter by letter, so that it is read out and not pronounced. */}
          {[...code].join(' ')}
        </p>
        <CopyLink link={link} label={LOBBY.inviteTitle} copied={LOBBY.copied} shareText={LOBBY.shareText} />
      </div>
      <QrPicture link={link} />
    </section>
  );
}
