// At a table of a class before its first deal.
import { ROOM } from '../room/strings.ts';

export function LedWaiting() {
  return (
    <main class="quiet">
      <h1>{ROOM.ledWaiting}</h1>
      <p>{ROOM.ledAbout}</p>
    </main>
  );
}
