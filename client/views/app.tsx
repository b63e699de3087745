// Which screen the address asks for.
import type { App } from '../model/app.ts';
import { dealKey } from '../practice/deal-link.ts';
import { Front } from './front.tsx';
import { RoomScreen } from './room-screen.tsx';

export function AppView({ app }: { readonly app: App }) {
  const route = app.route.value;
  switch (route.kind) {
    case 'front':
      return <Front app={app} />;
    case 'room':
      return <RoomScreen key={route.code} app={app} open={() => app.room(route.code)} />;
    case 'deal': {
      const { shared } = route;
      return <RoomScreen key={dealKey(shared)} app={app} open={() => app.practice(shared)} />;
    }
  }
}
