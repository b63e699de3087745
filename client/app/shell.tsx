// Which screen the address asks for, and the sheet that lies over it.

import { Front } from './front.tsx';
import {
  cardsPart,
  classPart,
  helpPart,
  ownTilesPart,
  practicePart,
  roomsPart,
  settingsPart,
} from './lazy.ts';
import { LazyView } from './lazy-view.tsx';
import { Missing } from './missing.tsx';
import type { App } from './routes/app.ts';
import { dealKey } from './routes/deal-link.ts';

export function Shell({ app }: { readonly app: App }) {
  return (
    <div class="page">
      <CurrentPage app={app} />
      <CurrentSheet app={app} />
    </div>
  );
}

function CurrentPage({ app }: { readonly app: App }) {
  const route = app.route.value;
  switch (route.kind) {
    case 'front':
      return <Front app={app} />;
    case 'missing':
      return <Missing app={app} what={route.what} />;
    case 'room':
      return (
        <LazyView part={roomsPart}>
          {({ RoomScreen, serverRoom }) => (
            <RoomScreen key={route.code} app={app} open={() => serverRoom(route.code)} />
          )}
        </LazyView>
      );
    case 'deal': {
      const { shared } = route;
      return (
        <LazyView part={roomsPart}>
          {({ RoomScreen, DealCardNote, pageRoom }) => (
            <RoomScreen
              key={dealKey(shared)}
              app={app}
              open={() => pageRoom(shared, app.settings.peek())}
              guide={(screen) => <DealCardNote shared={shared} screen={screen} />}
            />
          )}
        </LazyView>
      );
    }
    case 'class': {
      const { code, part } = route;
      return (
        <LazyView part={classPart}>
          {({ ClassScreen, ...tables }) => (
            <ClassScreen key={`${code}/${part}`} app={app} code={code} part={part} tables={tables} />
          )}
        </LazyView>
      );
    }
    case 'drill':
      return (
        <LazyView part={classPart}>
          {({ DrillScreen, ...tables }) => (
            <DrillScreen key={route.code} app={app} code={route.code} tables={tables} />
          )}
        </LazyView>
      );
    case 'club':
      return (
        <LazyView part={classPart}>
          {({ ClubScreen }) => <ClubScreen key={route.code} app={app} code={route.code} />}
        </LazyView>
      );
    case 'home-deal': {
      const { room, round } = route;
      return (
        <LazyView part={classPart}>
          {({ HomeDealScreen, ...tables }) => (
            <HomeDealScreen key={`${room}/${round}`} app={app} room={room} round={round} tables={tables} />
          )}
        </LazyView>
      );
    }
    case 'prepare':
      return (
        <LazyView part={classPart}>
          {({ PrepareScreen }) => <PrepareScreen key={route.drill ?? 'new'} app={app} drill={route.drill} />}
        </LazyView>
      );
    case 'teaching':
      return <LazyView part={classPart}>{({ LibraryScreen }) => <LibraryScreen app={app} />}</LazyView>;
    case 'group':
      return (
        <LazyView part={classPart}>
          {({ GroupScreen }) => <GroupScreen key={route.name} app={app} name={route.name} />}
        </LazyView>
      );
    case 'own-tiles':
      return <LazyView part={ownTilesPart}>{({ OwnTilesPage }) => <OwnTilesPage app={app} />}</LazyView>;
    case 'rounds':
      return <LazyView part={practicePart}>{({ HistoryScreen }) => <HistoryScreen app={app} />}</LazyView>;
    case 'habits':
      return (
        <LazyView part={practicePart}>
          {({ HabitsScreen, startDeepAnalysis }) => (
            <HabitsScreen app={app} startDeepAnalysis={startDeepAnalysis} />
          )}
        </LazyView>
      );
    case 'exercises':
      return (
        <LazyView part={practicePart}>
          {({ ExercisesScreen, chosenCard, startDeepAnalysis, openDealDrawer }) => (
            <ExercisesScreen
              app={app}
              {...{ startDeepAnalysis, openDealDrawer }}
              {...chosenCard(app.settings.peek().card)}
            />
          )}
        </LazyView>
      );
    case 'racks':
      return (
        <LazyView part={practicePart}>
          {({ RacksScreen, chosenCard, openDealDrawer }) => (
            <RacksScreen
              app={app}
              openDealDrawer={openDealDrawer}
              {...chosenCard(app.settings.peek().card)}
            />
          )}
        </LazyView>
      );
    case 'days':
      return <LazyView part={practicePart}>{({ DayScreen }) => <DayScreen app={app} />}</LazyView>;
    case 'day': {
      const { date } = route;
      return (
        <LazyView part={practicePart}>
          {({ RoomScreen, DayNote, dayRoom }) => (
            <RoomScreen
              key={date}
              app={app}
              open={() => dayRoom(date, app.settings.peek())}
              guide={() => <DayNote app={app} date={date} />}
            />
          )}
        </LazyView>
      );
    }
    case 'past-round':
      return (
        <LazyView part={practicePart}>
          {({ PastRoundScreen, RoomScreen, pastRoom, cardOfTable }) => (
            <PastRoundScreen
              key={route.id}
              app={app}
              id={route.id}
              RoomScreen={RoomScreen}
              pastRoom={pastRoom}
              loadCard={cardOfTable}
            />
          )}
        </LazyView>
      );
    case 'cards': {
      const { open } = route;
      return (
        <LazyView part={cardsPart}>
          {({ MyCards, CardEditor }) =>
            open === null ? <MyCards app={app} /> : <CardEditor key={open} app={app} cardKey={open} />
          }
        </LazyView>
      );
    }
    case 'card-link':
      return (
        <LazyView part={cardsPart}>
          {({ CardFromLink }) => <CardFromLink key={route.packed} app={app} packed={route.packed} />}
        </LazyView>
      );
    case 'lesson-link': {
      const { packed } = route;
      return (
        <LazyView part={practicePart}>
          {({ LessonPage }) => <LessonPage key={packed} app={app} packed={packed} />}
        </LazyView>
      );
    }
    case 'lesson':
      return (
        <LazyView part={roomsPart}>
          {({ RoomScreen, LessonGuide, lessonRoom }) => (
            <RoomScreen
              key="lesson"
              app={app}
              open={() => lessonRoom(app.settings.peek())}
              guide={(screen) => <LessonGuide screen={screen} onFinish={() => app.go({ kind: 'front' })} />}
            />
          )}
        </LazyView>
      );
  }
}

function CurrentSheet({ app }: { readonly app: App }) {
  switch (app.sheet.value) {
    case null:
      return null;
    case 'settings':
      return <LazyView part={settingsPart}>{({ SettingsSheet }) => <SettingsSheet app={app} />}</LazyView>;
    case 'help':
      return <LazyView part={helpPart}>{({ HelpSheet }) => <HelpSheet app={app} />}</LazyView>;
  }
}
