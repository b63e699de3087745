// A link in a field of its own, with a button that copies it and says whether that worked.
import { useSignal } from '@preact/signals';
import { LOBBY } from './strings.ts';

interface CopyLinkProps {
  readonly link: string;
  readonly label: string;
  /** What is said once it is copied. */
  readonly copied: string;
}

export function CopyLink({ link, label, copied }: CopyLinkProps) {
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
