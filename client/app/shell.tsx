// Which screen the address asks for, and the sheet that lies over it.

import { deskPart, helpPart, roomsPart, settingsPart } from './features.ts';
import { Front } from './front.tsx';
import { Fetched } from './lazy-view.tsx';
import type { App } from './routes/app.ts';
import { dealKey } from './routes/deal-link.ts';

export function AppView({ app }: { readonly app: App }) {
  return (
    <div class="page">
      <Place app={app} />
      <Over app={app} />
    </div>
  );
}

function Place({ app }: { readonly app: App }) {
  const route = app.route.value;
  switch (route.kind) {
    case 'front':
      return <Front app={app} />;
    case 'room':
      return (
        <Fetched later={roomsPart}>
          {({ RoomScreen, serverRoom }) => (
            <RoomScreen key={route.code} app={app} open={() => serverRoom(route.code)} />
          )}
        </Fetched>
      );
    case 'deal': {
      const { shared } = route;
      return (
        <Fetched later={roomsPart}>
          {({ RoomScreen, pageRoom }) => (
            <RoomScreen key={dealKey(shared)} app={app} open={() => pageRoom(shared, app.settings.peek())} />
          )}
        </Fetched>
      );
    }
    case 'class': {
      const { code, part } = route;
      return (
        <Fetched later={deskPart}>
          {({ ClassScreen }) => <ClassScreen key={`${code}/${part}`} app={app} code={code} part={part} />}
        </Fetched>
      );
    }
    case 'prepare':
      return <Fetched later={deskPart}>{({ PrepareScreen }) => <PrepareScreen app={app} />}</Fetched>;
    case 'lesson':
      return (
        <Fetched later={roomsPart}>
          {({ LessonScreen, lessonRoom }) => (
            <LessonScreen key="lesson" app={app} open={() => lessonRoom(app.settings.peek())} />
          )}
        </Fetched>
      );
  }
}

function Over({ app }: { readonly app: App }) {
  switch (app.sheet.value) {
    case null:
      return null;
    case 'settings':
      return <Fetched later={settingsPart}>{({ SettingsSheet }) => <SettingsSheet app={app} />}</Fetched>;
    case 'help':
      return <Fetched later={helpPart}>{({ HelpSheet }) => <HelpSheet app={app} />}</Fetched>;
  }
}
