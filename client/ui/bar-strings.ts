// What the bar over every screen says.

export const BAR = {
  home: 'Quadrille, front page',
  tools: 'Help and settings',
  help: 'Help',
  settings: 'Settings',
} as const;
