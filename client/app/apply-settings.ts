// Settings that the styles need to know, as attributes of the document.
import type { Settings } from '../storage/settings.ts';

export function applySettings(
  { textSize, indexMarks, reduceMotion }: Pick<Settings, 'textSize' | 'indexMarks' | 'reduceMotion'>,
  { dataset }: Pick<HTMLElement, 'dataset'>,
): void {
  dataset.text = String(textSize);
  dataset.marks = indexMarks ? 'on' : 'off';
  dataset.motion = reduceMotion ? 'reduced' : 'full';
}
