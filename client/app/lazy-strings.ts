// What the page says while a part of it is on its way.

export const PART = {
  coming: 'Opening…',
  missing: 'This part of the page cannot be fetched just now. Check your connection.',
  again: 'Try again',
} as const;
