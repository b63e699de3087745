// The table in each state: steps, seats, the open question, connection, and the card over or beside it.

import { type SeatInfo, STANDARD_TERMS, STEPS, type Table } from '../../../shared-engine/index.ts';
import { CardPanel } from '../../cards/card-panel.tsx';
import type { ConnectionState } from '../../connection/connection.ts';
import { type Room, seatedAt } from '../../room/room.ts';
import { StepStrip } from '../../room/step-strip.tsx';
import { ConnectionBar } from '../../table/connection-bar.tsx';
import { DrawnSeat } from '../../table/drawn-seat.tsx';
import { TableScreen } from '../../table/table-screen.tsx';
import { Part, State } from './frame.tsx';
import { card, type PlayedRound, roomAt } from './stage.ts';

export function StepsPart() {
  return (
    <Part name="steps">
      {STEPS.filter((step) => step !== 'courtesy-pass').map((step) => (
        <State key={step} name={step}>
          <div class="progress">
            <StepStrip open={step} stopped={false} terms={STANDARD_TERMS.alone} />
          </div>
        </State>
      ))}
      <State name="the second Charleston was stopped">
        <div class="progress">
          <StepStrip open="courtesy-ask" stopped terms={STANDARD_TERMS.alone} />
        </div>
      </State>
      <State name="closed, without a second Charleston">
        <div class="progress">
          <StepStrip
            open={null}
            stopped={false}
            terms={{ ...STANDARD_TERMS.alone, secondCharleston: 'none' }}
          />
        </div>
      </State>
    </Part>
  );
}

const person = (name: string, present: boolean): SeatInfo => ({
  kind: 'person',
  name,
  present,
  ready: false,
  host: false,
  ...(!present && { botFrom: Date.UTC(2030, 0, 1, 19, 30) }),
});

const HOLDERS: readonly { readonly name: string; readonly info: SeatInfo; readonly ready: boolean | null }[] =
  [
    { name: 'a bot that chooses', info: { kind: 'bot', name: 'Odo', style: 'typical' }, ready: false },
    { name: 'a person who is ready', info: person('Wilma', true), ready: true },
    { name: 'a person who is away', info: person('Tomas', false), ready: false },
    { name: 'a long name, nothing open', info: person('Bartholomea Featherstone', true), ready: null },
  ];

export function SeatsPart({ opened }: Pick<PlayedRound, 'opened'>) {
  return (
    <Part name="seats">
      {HOLDERS.map(({ name, info, ready }, place) => (
        <State key={name} name={name}>
          <SeatOf table={opened[place]!} info={info} ready={ready} />
        </State>
      ))}
    </Part>
  );
}

function SeatOf({
  table,
  info,
  ready,
}: {
  readonly table: Table;
  readonly info: SeatInfo;
  readonly ready: boolean | null;
}) {
  const seated = seatedAt(table);
  if (!seated) return null;
  const seats = [table.seats[0], info, table.seats[2], table.seats[3]] as const;
  const said = [{ seat: 1, phrase: 'well-passed', to: null, nth: 1 }] as const;
  return (
    <div class="surface-frame">
      <ul class="surface cloth">
        <DrawnSeat
          table={{ ...table, seats, ...(ready && { said }) }}
          view={seated.view}
          seat={1}
          place="left"
          ready={ready}
          receives={ready === true}
        />
      </ul>
    </div>
  );
}

const CONNECTIONS: readonly ConnectionState[] = [
  { kind: 'connecting' },
  { kind: 'read-only' },
  { kind: 'waiting', failures: 1 },
  { kind: 'ended', reason: 'replaced' },
  { kind: 'ended', reason: 'outdated' },
  { kind: 'ended', reason: 'seat-lost' },
  { kind: 'ended', reason: 'no-room' },
];

export function ConnectionPart() {
  return (
    <Part name="connection">
      {CONNECTIONS.map((state) => (
        <ConnectionBar
          key={JSON.stringify(state)}
          state={state}
          pendingCount={0}
          seen
          canPlayOn={false}
          onButton={() => {}}
          onPlayOn={() => {}}
        />
      ))}
    </Part>
  );
}

interface TablesPartProps {
  readonly round: PlayedRound;
}

export function TablesPart({ round: { opened, answered } }: TablesPartProps) {
  const [right, across, left, vote] = opened;
  const ask = answered.findLast(({ view }) => view?.stage.phase === 'asking');
  const moments: readonly (readonly [string, Room])[] = [
    ['table-dealt', roomAt(right!)],
    ['table-full', roomAt(right!, { tray: 3 })],
    ['table-rejected', roomAt(across!, { tray: 1, rejected: 'Jokers can’t be passed: keep them.' })],
    ['table-blind', roomAt(left!, { tray: 1, blind: 2 })],
    ['table-vote', roomAt(vote!)],
    ...(ask ? ([['table-courtesy', roomAt(ask)]] as const) : []),
  ];
  return (
    <>
      {moments.map(([name, room]) => (
        <Part key={name} name={name}>
          <TableOf room={room} />
        </Part>
      ))}
      <Part name="table-card">
        <TableOf room={roomAt(right!, { cardOpen: true })} />
      </Part>
      <Part name="card">
        <State name="on its way">
          <CardPanel {...CARD} load={() => new Promise(() => {})} />
        </State>
        <State name="not to be had">
          <CardPanel {...CARD} load={async () => null} />
        </State>
        <State name="in its own order">
          <CardPanel {...CARD} load={async () => card} />
        </State>
      </Part>
    </>
  );
}

const CARD = { rack: ['bam-1', 'bam-1', 'joker'], nearestFirst: false, gone: [], onClose() {} } as const;

function TableOf({ room }: { readonly room: Room }) {
  const seated = seatedAt(room.state.value.table);
  if (!seated) return null;
  return (
    <div class="room">
      <TableScreen
        room={room}
        seated={seated}
        card={<CardPanel {...CARD} rack={seated.view.rack} load={room.loadCard} />}
      />
    </div>
  );
}
