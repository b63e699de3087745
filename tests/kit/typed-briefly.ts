// The shorthand as somebody types who knows it: words cut short, no plus.

const SHORT: Readonly<Record<string, string>> = {
  concealed: 'c',
  flower: 'f',
  zero: 'z',
  match: 'm',
  wind: 'wi',
  dragon: 'd',
  year: 'y',
  east: 'e',
  south: 'sou',
  west: 'we',
  north: 'n',
  green: 'g',
  red: 'r',
  soap: 'soa',
};

/** Takes a text of `writeShorthand`; it is read as the same pattern. Words of limits have other neighbors and stay. */
export function typedBriefly(text: string): string {
  return text
    .split(' ')
    .map((word) =>
      word.includes('=')
        ? word
        : word.replaceAll('+', '').replace(/[a-z]{3,}/, (long) => SHORT[long] ?? long),
    )
    .join(' ');
}
