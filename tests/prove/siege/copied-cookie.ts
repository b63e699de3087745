// Part 7: somebody has copied the cookie of a seat. It opens nothing once its owner has come back, who keeps the seat.
import { OVERTAKEN_MS } from '../../../server/room/seat-secrets.ts';
import { askForTicket, comeBack, copiedSecret } from '../../kit/seat-secrets.ts';
import { pause } from '../faults/server-under-test.ts';
import { type Attack, findingsOf } from './siege.ts';

const ATTEMPTS = 20;
const tell = findingsOf('7 copied cookie');

export const copiedCookie: Attack = async ({ server, size }) => {
  const { guest, copy, owner } = await copiedSecret(server);
  const opened: number[] = [];
  for (let attempt = 0; attempt < ATTEMPTS; attempt++) {
    const { status } = await askForTicket(server, guest.code, copy);
    if (status === 200) opened.push(attempt);
  }
  const again = await comeBack(server, guest, owner.next);
  const rows = [
    tell(
      `of ${ATTEMPTS} attempts with a copied secret, those that opened something`,
      '0',
      opened.length,
      opened.length === 0,
    ),
    tell(
      'the owner comes back with the own secret meanwhile',
      'at seat 0',
      `at seat ${again.peer.table.you}`,
      again.peer.table.you === 0,
    ),
  ];
  if (size === 'full') {
    await pause(OVERTAKEN_MS + 500);
    const { status, code } = await askForTicket(server, guest.code, copy);
    await again.peer.until('the warning', (message) => message.kind === 'old-secret-shown');
    const found = `${status} ${code}, and the owner is told`;
    rows.push(tell('the copy half a minute later', '403 old-secret', found, code === 'old-secret'));
  }
  await again.peer.close();
  return rows;
};
