// Checks what the close has opened against the commitment that the page kept, and says in words what that proves.
import { checkDealFile, DEAL_FORMAT, type DealFile, roundIdOf } from '../../shared-engine/index.ts';
import type { Seated } from '../room/room.ts';
import { saveFile } from '../ui/save-file.ts';
import { checkResult, DEAL_CHECK } from './deal-check-strings.ts';

type Words = typeof import('../room/commitment-words.tsx');

interface DealCheckResultProps {
  readonly seated: Seated;
  /** As the page first saw it. */
  readonly commitment: string;
  /** The part of the page with the list of words. */
  readonly words: Words;
}

export function DealCheckResult({ seated, commitment, words }: DealCheckResultProps) {
  const { code, round } = seated.table;
  const file = dealFileOf(seated, commitment);
  const check = file && checkDealFile(file);
  if (file === null || check === null) return <p class="verdict">{DEAL_CHECK.nothing}</p>;
  const save = () =>
    saveFile(
      `quadrille-deal-${code}-${round}.json`,
      'application/json',
      `${JSON.stringify(file, null, 2)}\n`,
    );
  return (
    <>
      <p class="verdict">{checkResult(file, check)}</p>
      <p>{file.kind === 'open-round' ? DEAL_CHECK.aboutOpen : DEAL_CHECK.aboutOwn}</p>
      <dl>
        <dt>{DEAL_CHECK.words}</dt>
        <dd>
          <words.CommitmentWords commitment={commitment} />
        </dd>
        <dt>{DEAL_CHECK.fingerprint}</dt>
        <dd class="hex">{commitment}</dd>
        {file.kind === 'open-round' && (
          <>
            <dt>{DEAL_CHECK.seed}</dt>
            <dd class="hex">{file.opened.seed}</dd>
          </>
        )}
      </dl>
      <words.WordsAbout />
      <button type="button" onClick={save}>
        {DEAL_CHECK.save}
      </button>
      <p class="aside">{DEAL_CHECK.saveAbout}</p>
    </>
  );
}

/** Null where the close has opened nothing for this seat. */
function dealFileOf({ table, view }: Seated, commitment: string): DealFile | null {
  const { stage, ownLeaf, dealer, record, terms } = view;
  if (stage.phase !== 'closed') return null;
  const committed = {
    format: DEAL_FORMAT,
    dealer,
    seat: record.seat,
    rack: record.start,
    roundId: roundIdOf(table.code, table.round),
    terms,
    commitment,
  };
  if (ownLeaf) return { kind: 'own-rack', ...committed, ownLeaf };
  const { opened, racks } = stage;
  if (opened === null || racks === null) return null;
  const moves = record.steps.flatMap((move) =>
    move.kind === 'move' ? [{ step: move.step, gave: move.gave, received: move.received }] : [],
  );
  return { kind: 'open-round', ...committed, opened, racks, moves };
}
