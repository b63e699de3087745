// What the dashboard says about a teacher's keys and the code of the big screen, and what a big screen asks for.
export const KEYS = {
  title: 'Other computers',
  about:
    'A key opens this dashboard at another computer, for a second teacher, or when this browser has lost the class. Whoever has it can do all that you can.',
  make: 'Make a key',
  once: 'This key is shown once. Save it as a file, or copy the link.',
  link: 'Link with the key',
  copy: 'Copy the link',
  copied: 'Copied.',
  save: 'Save the key as a file',
  revoke: (day: string) => `Take back the key made on ${day}`,
  revokeSure: 'Yes, take it back',
  revokeNot: 'No',
  revokeAbout: 'Whoever opened the dashboard with it is out at once.',
  open: 'Open a class with a key file',
  noKey: 'There is no teacher’s key in that file. Choose the file that was saved at the dashboard.',
} as const;

export const ADDRESS = {
  ownComputer:
    'You opened this page under an address that leads to this computer alone. Say under which address phones reach it, so that links lead there.',
  label: 'Address that phones open',
  set: 'Set the address',
  wrong:
    'Type the name or number of this computer in your network and its port, such as http://192.168.0.12:8080.',
} as const;

export const SCREEN = {
  title: 'Code for the big screen',
  about:
    'At the computer on the wall, open the link of this class’s big screen and type this code. It needs no login and shows nothing but the big screen.',
  make: 'Make a code',
  again: 'Make a new code',
  againAbout: 'Big screens opened with the old code close.',
  open: (count: number) => `${count === 1 ? '1 computer has' : `${count} computers have`} opened it.`,
  heading: 'The big screen of this class',
  ask: 'Code for the big screen',
  askAbout: 'Your teacher has it on the dashboard: six letters and digits.',
  go: 'Show the big screen',
} as const;
