// What a table in the page itself is called, and who sits at it.

export const PRACTICE = {
  title: 'Practice in this page',
  bots: ['Merle', 'Nuno', 'Orla', 'Dunja'],
} as const;
