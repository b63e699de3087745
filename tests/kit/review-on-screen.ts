// A review as it is on the screen, read again after every change of the page, so that no moment between two is missed.
import type { Page } from 'playwright-core';

/** A pass on the screen: what stands under it, and its tiles in the words that are read aloud. */
export interface ShownPass {
  readonly caption: string;
  readonly tiles: string;
}

export interface ShownStep {
  readonly name: string;
  readonly verdict: string;
  readonly isNew: boolean;
  readonly isOpen: boolean;
}

/** A row of the chart of alternatives: its name, its tags, and where its bar begins and ends; the own choice has none. */
export interface ShownRow {
  readonly name: string;
  readonly tags: readonly string[];
  readonly bar: { readonly from: number; readonly to: number } | null;
}

export interface ReviewOnScreen {
  readonly headline: string;
  readonly top: readonly ShownPass[];
  readonly strip: readonly ShownStep[];
  readonly open: {
    readonly title: string;
    readonly sentences: string;
    readonly pair: readonly ShownPass[];
    readonly rows: readonly ShownRow[];
    /** Where the own choice stands in the chart, and where the band of what is too little to matter ends. */
    readonly own: number;
    readonly bandEnd: number;
  };
  /** The step that the button to what the top speaks of names; null without that button. */
  readonly pointsTo: string | null;
  /** How many choices the page says were played on; null where it says nothing of it. */
  readonly playedOn: number | null;
  /** The chart of the whole round in words. */
  readonly progress: string;
}

export interface Watched {
  /** What was on the screen after each change since the last call, and what is there now. */
  moments(): Promise<readonly ReviewOnScreen[]>;
}

/** From now on until the page is left. */
export async function watchReview(page: Page): Promise<Watched> {
  const watching = await page.evaluateHandle(watch);
  return { moments: () => watching.evaluate((moments) => moments()) };
}

/** In the page; everything it needs stands inside. */
function watch(): () => ReviewOnScreen[] {
  const textOf = (element: Node | null | undefined) => element?.textContent?.trim() ?? '';
  const allIn = (place: ParentNode | null, selector: string) => [
    ...(place?.querySelectorAll(selector) ?? []),
  ];
  const passes = (place: ParentNode | null): ShownPass[] =>
    allIn(place, '.pass-pair figure').map((figure) => ({
      caption: textOf(figure.querySelector('figcaption')),
      tiles: textOf(figure.querySelector('.spoken')),
    }));
  const drawn = (place: ParentNode | null, selector: string) => {
    const shape = place?.querySelector(selector);
    if (!(shape instanceof SVGGraphicsElement)) return null;
    const { x, width } = shape.getBBox();
    return { from: x, to: x + width };
  };
  const rowIn = (row: Element): ShownRow => {
    const name = row.querySelector('.alternative-name');
    return {
      name: textOf(name?.querySelector('.spoken') ?? name?.firstChild),
      tags: allIn(row, '.tag').map(textOf),
      bar: drawn(row, 'path.whisker'),
    };
  };
  const read = (): ReviewOnScreen => {
    const open = document.querySelector('.choice-detail');
    const button = allIn(document, '.choices > button').map(textOf);
    const progress = document.querySelector('#analysis-progress');
    return {
      headline: textOf(document.querySelector('.lesson-text')),
      top: passes(document.querySelector('.lesson')),
      strip: allIn(document, '.choice-strip button').map((step) => ({
        name: textOf(step.querySelector('.choice-name')),
        verdict: textOf(step.querySelector('.choice-verdict')?.firstChild),
        isNew: step.querySelector('.new-answer') !== null,
        isOpen: step.getAttribute('aria-pressed') === 'true',
      })),
      open: {
        title: textOf(open?.querySelector('h3')),
        sentences: allIn(open, '.verdict').map(textOf).join(' '),
        pair: passes(open),
        rows: allIn(open, 'li.alternative').map(rowIn),
        own: drawn(open, '.whisker-zero')?.from ?? 0,
        bandEnd: drawn(open, '.whisker-band')?.to ?? 0,
      },
      pointsTo: button[0]?.replace(/^.*: /, '') ?? null,
      playedOn: progress instanceof HTMLProgressElement ? progress.value : null,
      progress: document.querySelector('.round-progress svg')?.getAttribute('aria-label') ?? '',
    };
  };
  const seen: ReviewOnScreen[] = [];
  new MutationObserver(() => seen.push(read())).observe(document.body, {
    subtree: true,
    childList: true,
    characterData: true,
    attributes: true,
  });
  return () => [...seen.splice(0), read()];
}
