// Settings that the styles must know, as attributes of the document.
import type { Settings } from '../storage/settings.ts';

type Look = Pick<Settings, 'textSize' | 'indexMarks' | 'still'>;

export function showSettings(
  { textSize, indexMarks, still }: Look,
  { dataset }: Pick<HTMLElement, 'dataset'>,
): void {
  dataset.text = String(textSize);
  dataset.marks = indexMarks ? 'on' : 'off';
  dataset.motion = still ? 'still' : 'free';
}
