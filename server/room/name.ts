// What counts as a person's name at the table, and how two that look alike are told apart.
import { isVisibleName } from '../../shared-engine/index.ts';

const LONGEST = 24;
const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** The name in NFC with single spaces, or null when it is empty, too long or would upset the line it stands in. */
export function parseName(text: string): string | null {
  if (!isVisibleName(text)) return null;
  const name = text.normalize('NFC').replace(/\s+/gu, ' ').trim();
  if (name.length > LONGEST * 8) return null;
  return [...graphemes.segment(name)].length <= LONGEST ? name : null;
}

/** The name, or with a number behind it where somebody has one that reads the same. */
export function distinctName(name: string, taken: readonly string[]): string {
  const seen = new Set(taken.map(readingOf));
  const names = [name, ...taken.map((_, n) => `${name} (${n + 2})`)];
  return names.find((one) => !seen.has(readingOf(one))) ?? name;
}

/** Letters of other scripts and digits, each followed by the Latin letter that it is taken for. */
const LOOKALIKES = new Map(
  [
    // Cyrillic.
    'АA ВB ЕE ЁË ЗZ НH ІI ЇÏ ЈJ КK МM ОO РP СC ТT УY ХX ЅS ӀI',
    'аa еe ёë іi їï јj кk оo рp сc уy хx ѕs һh ԁd ԛq ԝw ӏl',
    // Greek.
    'ΑA ΒB ΕE ΖZ ΗH ΙI ΚK ΜM ΝN ΟO ΡP ΤT ΥY ΧX',
    'αa ηn ιi κk νv οo ρp τt υu χx γy ωw',
    // Armenian, and Latin ones that stand apart in Unicode.
    'օo սu ցg ıi ɑa ɡg ɩi',
    // Digits and signs, and what is left alike when all letters are small.
    '0o 1l il |l',
  ]
    .join(' ')
    .split(' ')
    .map((pair): [string, string] => {
      const [from = '', to = ''] = [...pair.normalize('NFC')];
      return [from, to];
    }),
);

/** Two names with the same reading are taken for one another: case, width and look-alike letters set aside. */
function readingOf(name: string): string {
  const latin = (text: string) => [...text].map((letter) => LOOKALIKES.get(letter) ?? letter).join('');
  // Letter by letter before the case is set aside, for a capital may look like another letter than its small one.
  return latin(latin(name.normalize('NFKC')).toLowerCase()).replace(/\s+/gu, ' ');
}
