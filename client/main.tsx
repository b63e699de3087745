// Starts the page: connects the browser's address, storage and random numbers to the app.
import { render } from 'preact';
import { openApp } from './app/app-state.ts';
import { applySettings } from './app/apply-settings.ts';
import { helpPart, roomsPart, settingsPart } from './app/lazy.ts';
import { randomHex } from './connection/random.ts';
import { lastingStorage } from './storage/browser-storage.ts';
import './ui/tokens.css';
import './ui/base.css';
import './room/ways.css';
import './ui/bar.css';
import './app/front.css';
import { Shell } from './app/shell.tsx';

/** The state of a step in the browser's history that was made for something over the screen. */
const OVER = 'over';

const app = openApp({
  storage: lastingStorage,
  place: () => {
    const { pathname, hash } = window.location;
    return { pathname, hash, over: window.history.state === OVER };
  },
  origin: window.location.origin,
  showPath: (path, over) => window.history.pushState(over ? OVER : null, '', path),
  renamePath: (path) => window.history.replaceState(window.history.state, '', path),
  goBack: () => window.history.back(),
  onReturn: (run) => {
    window.addEventListener('popstate', run);
    return () => window.removeEventListener('popstate', run);
  },
  newSeed: () => randomHex(32),
  random: { below: (count) => (crypto.getRandomValues(new Uint8Array(1))[0] ?? 0) % count },
});

if (app.route.peek().kind !== 'front') void roomsPart.fetch();
app.settings.subscribe((settings) => applySettings(settings, document.documentElement));

const page = document.getElementById('page');
// Removes what the document shows until the script runs.
page?.replaceChildren();
if (page) render(<Shell app={app} />, page);

window.addEventListener('load', () => {
  // The table is fetched while the player still reads the front page.
  setTimeout(
    () =>
      void roomsPart
        .fetch()
        .then(() => settingsPart.fetch())
        .then(() => helpPart.fetch()),
    300,
  );
  // During development files change without changing their names, so a cached one could be an old one.
  if (import.meta.env.PROD && 'serviceWorker' in navigator) {
    navigator.serviceWorker.register('/shell.js').catch((error: unknown) => console.warn(error));
  }
});
