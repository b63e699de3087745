// How players join: the code, the link and its square code, under an address that their phones can open.
import { useSignal } from '@preact/signals';
import { classLink, type Dashboard } from '../../../shared-engine/index.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { reachableOrigin, setPublicAddress } from '../../storage/public-address.ts';
import { QrPicture } from '../../ui/qr-picture.tsx';
import { DASHBOARD } from './strings.ts';

export function JoinPanel({ code, address }: Pick<Dashboard, 'code' | 'address'>) {
  const own = window.location.origin;
  const find = () => reachableOrigin(lastingStorage, { own, server: address });
  const origin = useSignal(find());
  const link = `${origin.value ?? own}${classLink(code)}`;
  return (
    <section class="join-panel" aria-labelledby="code-title">
      <div>
        <h2 id="code-title">{DASHBOARD.code}</h2>
        <p class="big-code" data-code={code}>
          {[...code].join(' ')}
        </p>
        <p>{DASHBOARD.codeAbout}</p>
        <p>
          <a href={classLink(code)}>{link}</a>
        </p>
        {address === null && origin.value !== own && (
          <AddressForm
            address={origin.value}
            onChange={() => {
              origin.value = find();
            }}
          />
        )}
      </div>
      {origin.value !== null && <QrPicture link={link} />}
    </section>
  );
}

interface AddressFormProps {
  /** The address that is set; null where none is. */
  readonly address: string | null;
  readonly onChange: () => void;
}

/** Asked where this page's own address leads to this computer alone. */
function AddressForm({ address, onChange }: AddressFormProps) {
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
      {address === null && <p>{DASHBOARD.ownComputer}</p>}
      <label for="public-address">{DASHBOARD.address}</label>
      <input
        id="public-address"
        autocapitalize="none"
        placeholder="http://192.168.0.12:8080"
        value={text.value}
        onInput={(event) => {
          text.value = event.currentTarget.value;
        }}
      />
      <p role="alert">{isWrong.value && DASHBOARD.addressWrong}</p>
      <div class="row">
        <button type="submit">{DASHBOARD.addressSet}</button>
      </div>
    </form>
  );
}
