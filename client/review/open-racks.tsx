// The four racks at the end, where the table's terms reveal them.
import { SEATS } from '../../shared-engine/index.ts';
import type { Seated } from '../room/room.ts';
import { capitalize, nameOrYou } from '../room/seat-names.ts';
import { BotTag } from '../room/seat-status.tsx';
import { TileRow } from '../tiles/tile-row.tsx';
import { REVIEW } from './strings.ts';

export function OpenRacks({ seated }: { readonly seated: Seated }) {
  const { stage } = seated.view;
  if (stage.phase !== 'closed' || stage.racks === null) return null;
  const { racks } = stage;
  return (
    <section class="panel open-racks">
      <h2>{REVIEW.racks}</h2>
      {SEATS.map((seat) => (
        <figure key={seat}>
          <figcaption>
            {capitalize(nameOrYou(seated.table, seat))} <BotTag info={seated.table.seats[seat]} />
          </figcaption>
          <TileRow tiles={racks[seat]} />
        </figure>
      ))}
    </section>
  );
}
