// How players join: the code, the link and its square code, under an address that their phones can open.
import { classLink, type Dashboard } from '../../../shared-engine/index.ts';
import { QrPicture } from '../../ui/qr-picture.tsx';
import { AddressForm, useReachable } from '../keys/address-form.tsx';
import { DASHBOARD } from './strings.ts';

export function JoinPanel({ code, address }: Pick<Dashboard, 'code' | 'address'>) {
  const { reachable, own, lookAgain } = useReachable(address);
  const link = `${reachable ?? own}${classLink(code)}`;
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
        {address === null && reachable !== own && <AddressForm address={reachable} onChange={lookAgain} />}
      </div>
      {reachable !== null && <QrPicture link={link} />}
    </section>
  );
}
