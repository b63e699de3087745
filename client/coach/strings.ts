// What the coach says around what it has worked out.
export const COACH = {
  ask: 'Ask the coach',
  about: 'One hint at a time. Your choice is then marked as helped.',
  titles: ['What stands out', 'Where it leads', 'What serves it', 'Our pass'],
  next: ['Where does it lead?', 'Which tiles serve it?', 'What would you pass?'],
  working: 'Playing the passes on many times…',
  failed: 'The coach cannot be reached just now. Check your connection.',
  helped: 'The coach helped you with this choice.',
} as const;
