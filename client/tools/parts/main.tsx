// The page of all parts in all their states. It is built for pictures and never ships.
import { render } from 'preact';
import '../../ui/tokens.css';
import '../../ui/base.css';
import '../../room/ways.css';
import '../../ui/bar.css';
import '../../ui/sheet.css';
import '../../app/front.css';
import '../../app/room-screen.tsx';
import './parts.css';
import { ControlsPart } from './controls-part.tsx';
import { LobbyPart, SheetAlone } from './lobby-part.tsx';
import { ReviewsPart } from './review-part.tsx';
import { playRound } from './stage.ts';
import { ConnectionPart, SeatsPart, StepsPart, TablesPart } from './table-part.tsx';
import { TilesPart } from './tiles-part.tsx';

document.documentElement.dataset.motion = 'reduced';
const round = await playRound();
const page = document.getElementById('page');
const { hash } = window.location;
if (page)
  render(
    hash.startsWith('#sheet') ? (
      <SheetAlone long={hash === '#sheet-long'} />
    ) : (
      <div class="page">
        <TilesPart />
        <ControlsPart />
        <ConnectionPart />
        <StepsPart />
        <SeatsPart opened={round.opened} />
        <TablesPart round={round} />
        <LobbyPart dealt={round.opened[0]!} />
        <ReviewsPart round={round} />
      </div>
    ),
    page,
  );
document.documentElement.dataset.ready = 'yes';
