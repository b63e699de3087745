// What keeps people out of a screen: serious axe findings, sideways scrolling, targets too small for a finger.
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** The rules that a change of colors alone may break. */
export const COLOR_RULES = ['color-contrast', 'link-in-text-block'] as const;

interface Rules {
  /** All of them unless some are named. */
  readonly only?: readonly string[];
  readonly leftOut?: readonly string[];
}

/** Serious and critical findings, as rule and place. */
export async function axeFindings(page: Page, { only, leftOut = [] }: Rules = {}): Promise<string[]> {
  // Legacy mode: one frame, so no second page for its results; and no list of what is in order, which nobody reads.
  const axe = new AxeBuilder({ page }).setLegacyMode(true).options({
    resultTypes: ['violations'],
    ...(only && { runOnly: { type: 'rule', values: [...only] } }),
    rules: Object.fromEntries(leftOut.map((rule) => [rule, { enabled: false }])),
  });
  const { violations } = await axe.analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) => nodes.map(({ target }) => `${id}: ${target.join(' ')}`));
}

/** How far the page can be scrolled sideways, in pixels. */
export function horizontalOverflow(page: Page): Promise<number> {
  return page.locator('html').evaluate((html) => html.scrollWidth - html.clientWidth);
}

/** Names of visible buttons, links and tiles smaller than 44 × 44 px. */
export function smallTargets(page: Page): Promise<string[]> {
  return page
    .locator('button, a, summary, select, input:not([type=radio], [type=checkbox]), .choice')
    .evaluateAll((all) =>
      all.flatMap((element) => {
        const { width, height } = element.getBoundingClientRect();
        const visible = width > 0 && height > 0;
        // Half a pixel of rounding is no smaller target.
        return visible && (width < 43.5 || height < 43.5)
          ? [`${element.tagName} ${element.textContent} ${width} × ${height}`]
          : [];
      }),
    );
}
