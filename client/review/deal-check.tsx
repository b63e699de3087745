// The page deals again from the seed and says whether the tiles were the ones that were promised.
import { bagOf, checkDeal, DEAL_FILE_FORMAT, type DealFile } from '../../shared-engine/index.ts';
import type { Seated } from '../room/room.ts';
import { saveFile } from '../ui/save-file.ts';
import { checkResult, DEAL_CHECK } from './deal-check-strings.ts';
import { REVIEW } from './strings.ts';

export function DealCheckPanel({ seated }: { readonly seated: Seated }) {
  const { view, table } = seated;
  if (view.stage.phase !== 'closed') return null;
  const { seed } = view.stage;
  const { seat, start } = view.record;
  if (seed === null || view.commitment === null) {
    return <p class="panel aside">{DEAL_CHECK.prepared}</p>;
  }
  const check = checkDeal({ seed, dealer: view.dealer }, view.commitment, { seat, rack: bagOf(start) });
  const file: DealFile = {
    format: DEAL_FILE_FORMAT,
    commitment: view.commitment,
    seed,
    dealer: view.dealer,
    seat,
    rack: start,
  };
  const name = `quadrille-deal-${table.code}-${table.round}.json`;
  return (
    <details class="panel deal-check">
      <summary>{REVIEW.check}</summary>
      <p class="verdict">{checkResult(check, start.length)}</p>
      <p>{DEAL_CHECK.about}</p>
      <dl>
        <dt>{DEAL_CHECK.fingerprint}</dt>
        <dd class="hex">{view.commitment}</dd>
        <dt>{DEAL_CHECK.seed}</dt>
        <dd class="hex">{seed}</dd>
      </dl>
      <button
        type="button"
        onClick={() => saveFile(name, 'application/json', `${JSON.stringify(file, null, 2)}\n`)}
      >
        {DEAL_CHECK.save}
      </button>
      <p class="aside">{DEAL_CHECK.saveAbout}</p>
    </details>
  );
}
