// Who may go on without the server: somebody alone with three of its bots, in a round that is not over and waits (rules G1, G4).
import { SEATS, type StyleName, type Table } from '../../shared-engine/index.ts';
import { seatedAt } from './room.ts';

/** How the three bots pass; null where others sit here, or where bots pass in more than one way. */
export function botsStyle({ seats, you }: Pick<Table, 'seats' | 'you'>): StyleName | null {
  const others = SEATS.filter((seat) => seat !== you).map((seat) => seats[seat]);
  const styles = others.map((info) => (info.kind === 'bot' && !info.external ? info.style : null));
  return styles.every((style) => style === styles[0]) ? (styles[0] ?? null) : null;
}

export function mayPlayOn(table: Table | null): boolean {
  const seated = seatedAt(table);
  if (seated === null || seated.table.controls) return false;
  const { stage, terms } = seated.view;
  // With a deadline the server chooses for whoever is away, and its table would not wait.
  return stage.phase !== 'closed' && terms.deadline === null && botsStyle(seated.table) !== null;
}
