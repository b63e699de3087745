// The button that saves a drill as a file; a card of one's own goes along once somebody has said that it may.
import { useSignal } from '@preact/signals';
import { type DrillFile, drillFileText } from '../../../shared-engine/index.ts';
import { fileName, saveFile } from '../../ui/save-file.ts';
import { MAY_SHARE } from '../../ui/strings.ts';
import { PREPARE } from './strings.ts';

interface SaveDrillButtonProps {
  readonly words: string;
  /** As it would be saved now. */
  readonly file: () => DrillFile;
  /** Name of the card in it about which nobody has said yet whether it may be passed on; null for none. */
  readonly asksAbout: string | null;
  /** Somebody has said that it may. */
  readonly onMayShare: () => void;
}

export function SaveDrillButton({ words, file, asksAbout, onMayShare }: SaveDrillButtonProps) {
  const asking = useSignal(false);

  function save({ card, ...withoutCard }: DrillFile, withCard: boolean) {
    const saved = withCard && card !== undefined ? { ...withoutCard, card } : withoutCard;
    saveFile(`${fileName(saved.drill.title)}.json`, 'application/json', drillFileText(saved));
    asking.value = false;
  }

  return (
    <>
      <button
        type="button"
        onClick={() => {
          if (asksAbout === null) save(file(), true);
          else asking.value = !asking.value;
        }}
      >
        {words}
      </button>
      {asking.value && asksAbout !== null && (
        <div class="notice" role="alert">
          <p>{MAY_SHARE.question(asksAbout)}</p>
          <div class="row">
            <button
              type="button"
              onClick={() => {
                onMayShare();
                save(file(), true);
              }}
            >
              {PREPARE.saveWithCard}
            </button>
            <button type="button" onClick={() => save(file(), false)}>
              {PREPARE.saveWithout}
            </button>
          </div>
        </div>
      )}
    </>
  );
}
