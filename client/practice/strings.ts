// What the page says about tables of its own: the same deal again, and playing without the server.

export const PRACTICE = {
  title: 'Practice in this page',
  bots: ['Merle', 'Nuno', 'Orla', 'Dunja'],
  offline: 'Play in this page, without the server',
  again: 'The same deal again',
  againAbout: 'Play these very tiles once more, choose differently, and see both reviews side by side.',
  againButton: 'Play it again',
  share: 'Send this deal to a friend',
  shareButton: 'Copy the deal link',
  shareAbout: 'Whoever opens the link sits where you sat, with the same tiles and three bots.',
  copied: 'Copied.',
  copyByHand: 'The link cannot be copied here; it stands in the address bar when you play the deal again.',
  sideBySide: 'Both times side by side',
  first: 'First time',
  now: 'This time',
  step: 'Step',
  end: 'At the close',
} as const;
