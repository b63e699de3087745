// The link and the code that bring friends to the table.
import { useSignal } from '@preact/signals';
import { QrPicture } from '../ui/qr-picture.tsx';
import { LOBBY } from './strings.ts';

export function Invite({ link, code }: { readonly link: string; readonly code: string }) {
  const copied = useSignal<'no' | 'yes' | 'failed'>('no');

  async function copy() {
    try {
      await navigator.clipboard.writeText(link);
      copied.value = 'yes';
    } catch {
      copied.value = 'failed';
    }
  }

  return (
    <section class="invite">
      <div class="invite-words">
        <h2>{LOBBY.inviteTitle}</h2>
        <p>{LOBBY.inviteAbout}</p>
        <p class="big-code" data-code={code}>
          {/* Spaced letter by letter, so that it is read out and not pronounced. */}
          {[...code].join(' ')}
        </p>
        <div class="row">
          <input
            class="link-field"
            readOnly
            value={link}
            aria-label={LOBBY.inviteTitle}
            onFocus={(event) => event.currentTarget.select()}
          />
          <button type="button" onClick={() => void copy()}>
            {LOBBY.copy}
          </button>
        </div>
        <p role="status">
          {copied.value === 'yes' && LOBBY.copied}
          {copied.value === 'failed' && LOBBY.copyByHand}
        </p>
      </div>
      <QrPicture link={link} />
    </section>
  );
}
