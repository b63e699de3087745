// The commitment of a deal as this page first saw it, so that the check at the close never trusts a later one.
import type { Table } from '../../shared-engine/index.ts';
import type { TextStorage } from '../storage/browser-storage.ts';

export interface KeptCommitment {
  readonly round: number;
  readonly commitment: string;
}

/** What is kept once this table has come: of one round the first commitment that was shown. */
export function keptWith(kept: KeptCommitment | null, { round, view }: Table): KeptCommitment | null {
  if (kept?.round === round) return kept;
  return view === null || view.commitment === null ? null : { round, commitment: view.commitment };
}

export function writeKept(kept: KeptCommitment | null, key: string, tab: TextStorage): void {
  if (kept === null) tab.remove(`commitment.${key}`);
  else tab.write(`commitment.${key}`, `${kept.round}|${kept.commitment}`);
}

export function readKept(key: string, tab: TextStorage): KeptCommitment | null {
  const match = /^(\d+)\|([0-9a-f]{64})$/.exec(tab.read(`commitment.${key}`) ?? '');
  return match && { round: Number(match[1]), commitment: match[2]! };
}
