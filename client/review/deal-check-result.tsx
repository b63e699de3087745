// Deals again from the seed and says whether the tiles were the ones that were promised.
import {
  bagOf,
  checkDeal,
  DEAL_FILE_FORMAT,
  type DealFile,
  type Seat,
  type SeatRecord,
} from '../../shared-engine/index.ts';
import { saveFile } from '../ui/save-file.ts';
import { checkResult, DEAL_CHECK } from './deal-check-strings.ts';

interface DealCheckResultProps {
  readonly seed: string;
  readonly commitment: string;
  readonly dealer: Seat;
  readonly record: Pick<SeatRecord, 'seat' | 'start'>;
  /** Of the file that the player can save. */
  readonly name: string;
}

export function DealCheckResult({ seed, commitment, dealer, record, name }: DealCheckResultProps) {
  const { seat, start } = record;
  const check = checkDeal({ seed, dealer }, commitment, { seat, rack: bagOf(start) });
  const file: DealFile = { format: DEAL_FILE_FORMAT, commitment, seed, dealer, seat, rack: start };
  return (
    <>
      <p class="verdict">{checkResult(check, start.length)}</p>
      <p>{DEAL_CHECK.about}</p>
      <dl>
        <dt>{DEAL_CHECK.fingerprint}</dt>
        <dd class="hex">{commitment}</dd>
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
    </>
  );
}
