// What the coach says around what it has worked out.
export const COACH = {
  ask: 'Ask the coach',
  about:
    'One hint at a time. A choice with a hint is marked as helped, and “What keeps costing me” leaves it out. “Choices and luck over time” leaves out its whole round.',
  first: 'Give me a hint',
  opening: 'The coach looks at your rack…',
  titles: ['What stands out', 'Where it leads', 'What serves it', 'Our choice'],
  next: ['Where does it lead?', 'Which tiles serve it?', 'What would you choose?'],
  working:
    'We play on from here many times. This takes some seconds, on a slow phone up to a minute. You need not wait for it.',
  failed: 'The coach cannot be reached just now. Check your connection.',
  helped: 'The coach helped you with this choice.',
} as const;
