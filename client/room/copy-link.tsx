// A link in a field of its own, with a button that copies it and says whether that worked.
import { useSignal } from '@preact/signals';
import { LOBBY, ROOM } from './strings.ts';

interface CopyLinkProps {
  readonly link: string;
  readonly label: string;
  /** What is said once it is copied. */
  readonly copied: string;
  /** What goes with the link where it may be sent to anybody; left out where it may not. */
  readonly shareText?: string;
}

export function CopyLink({ link, label, copied, shareText }: CopyLinkProps) {
  const state = useSignal<'no' | 'yes' | 'failed'>('no');

  async function copy() {
    try {
      await navigator.clipboard.writeText(link);
      state.value = 'yes';
    } catch {
      state.value = 'failed';
    }
  }

  return (
    <>
      <div class="row">
        <input
          class="link-field"
          readOnly
          value={link}
          aria-label={label}
          onFocus={(event) => event.currentTarget.select()}
        />
        {shareText && <ShareButton link={link} text={shareText} />}
        <button type="button" onClick={() => void copy()}>
          {LOBBY.copy}
        </button>
      </div>
      <p role="status">
        {state.value === 'yes' && copied}
        {state.value === 'failed' && LOBBY.copyByHand}
      </p>
    </>
  );
}

/** Opens the device's own way to send something; nothing where it has none. */
export function ShareButton({ link, text }: { readonly link: string; readonly text: string }) {
  if (!('share' in navigator)) return null;
  // Whoever closes the sheet again has changed their mind, which is no failure.
  const share = () => navigator.share({ title: ROOM.product, text, url: link }).catch(() => {});
  return (
    <button type="button" onClick={() => void share()}>
      {LOBBY.share}
    </button>
  );
}
