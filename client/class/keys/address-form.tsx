// Under which address phones reach this server, and where it is asked for: links and square codes lead there.
import { useSignal } from '@preact/signals';
import { useReducer } from 'preact/hooks';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { reachableOrigin, setPublicAddress } from '../../storage/public-address.ts';
import { ADDRESS } from './strings.ts';

/** `reachable` is null where no other device can open this page's own address and nobody has named another one. */
export function useReachable(server: string | null) {
  const own = window.location.origin;
  const [, lookAgain] = useReducer((looks: number) => looks + 1, 0);
  return {
    own,
    reachable: reachableOrigin(lastingStorage, { own, server }),
    lookAgain: () => lookAgain(null),
  };
}

interface AddressFormProps {
  /** The address that is set; null where none is. */
  readonly address: string | null;
  readonly onChange: () => void;
}

/** Asked where this page's own address leads to this computer alone. */
export function AddressForm({ address, onChange }: AddressFormProps) {
  const text = useSignal(address ?? '');
  const isWrong = useSignal(false);
  return (
    <form
      class="field"
      onSubmit={(event) => {
        event.preventDefault();
        isWrong.value = !setPublicAddress(lastingStorage, text.value);
        onChange();
      }}
    >
      {address === null && <p>{ADDRESS.ownComputer}</p>}
      <label for="public-address">{ADDRESS.label}</label>
      <input
        id="public-address"
        autocapitalize="none"
        placeholder="http://192.168.0.12:8080"
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
      />
      <p role="alert">{isWrong.value && ADDRESS.wrong}</p>
      <div class="row">
        <button type="submit">{ADDRESS.set}</button>
      </div>
    </form>
  );
}
