// A hand put into the editor of the built page by touch, as it stands on a card; the taps are counted.
import type { Locator, Page } from 'playwright-core';
import { KINDS, type Kind, kindsOf, meaningOf, USUAL_ANSWERS } from '../../client/cards/editor/meaning.ts';
import { ASK, ASK_ONE, LIMITS, PAD } from '../../client/cards/editor/strings.ts';
import { tileName } from '../../client/tiles/tile-names.ts';
import { canonicalPattern, type PatternBody } from '../../shared-engine/card/canonical.ts';
import { exampleOf } from '../../shared-engine/card/example.ts';
import type { CardPattern } from '../../shared-engine/card/format.ts';
import { SUITS, WINDS } from '../../shared-engine/rules/tiles/face.ts';

interface Hand {
  readonly body: PatternBody;
  readonly editor: Locator;
  readonly tap: (target: Locator) => Promise<void>;
}

/** Lays the hand into the empty one that is open, and goes on to the next; returns the taps, keys of the phone included. */
export async function layHand(page: Page, pattern: CardPattern): Promise<number> {
  let taps = 0;
  const hand: Hand = {
    body: canonicalPattern(pattern),
    editor: page.getByRole('region', { name: /^Hand \d+ of/ }),
    tap: async (target) => {
      // A choice is tapped through the words that lie over its dot.
      await target.tap({ force: true });
      taps++;
    },
  };
  await layTiles(hand);
  for (const kind of KINDS) await sayMeaning(hand, kind);
  await sayLimits(hand);
  await hand.tap(hand.editor.getByLabel('Points'));
  await page.keyboard.type(String(pattern.points));
  taps += String(pattern.points).length;
  if (pattern.concealed) await hand.tap(hand.editor.getByRole('checkbox', { name: 'Concealed' }));
  await hand.tap(hand.editor.getByRole('button', { name: 'Next hand' }));
  return taps;
}

async function layTiles({ body, editor, tap }: Hand): Promise<void> {
  const choose = (name: string) => tap(editor.getByRole('radio', { name, exact: true }));
  const { faces } = exampleOf(body, {}, 'laid')!;
  // What the pad begins with.
  let [size, suit] = ['3 ×', 'bam'];
  for (const [nth, group] of body.groups.entries()) {
    const face = faces[nth]!;
    if (size !== `${group.size} ×`) {
      size = `${group.size} ×`;
      await choose(size);
    }
    const own = SUITS.find((known) => face.startsWith(known));
    if (own && own !== suit) {
      suit = own;
      await choose(suit);
    }
    const name = 'zero' in group.tile ? PAD.zero : tileName(face);
    await tap(editor.getByRole('button', { name, exact: true }));
  }
}

/** Answers for all groups at once where they are meant alike, and one by one where they are not. */
async function sayMeaning({ body, editor, tap }: Hand, kind: Kind): Promise<void> {
  const groups = body.groups.flatMap(({ tile }, nth) =>
    kindsOf(tile).includes(kind) ? [{ nth, meant: meaningOf(tile)[kind] }] : [],
  );
  const unusual = groups.filter(({ meant }) => meant !== USUAL_ANSWERS[kind]);
  const first = unusual[0];
  if (first === undefined) return;
  const answer = (words: typeof ASK, meant: string) => {
    const texts: Readonly<Record<string, string>> = words[kind].answers;
    return editor
      .getByRole('group', { name: words[kind].title, exact: true })
      .getByRole('radio', { name: texts[meant]!, exact: true });
  };
  if (unusual.length === groups.length) return tap(answer(ASK, first.meant));
  for (const { nth, meant } of unusual) {
    await tap(editor.getByRole('button', { name: new RegExp(`^Group ${nth + 1}:`) }));
    await tap(answer(ASK_ONE, meant));
    await tap(editor.getByRole('button', { name: 'Done' }));
  }
}

/** Takes away what the hand does not allow; the house card limits suits and winds alone. */
async function sayLimits({ body, editor, tap }: Hand): Promise<void> {
  const limits = Object.entries(body.where ?? {});
  if (limits.length === 0) return;
  await tap(editor.getByText(LIMITS.title));
  for (const [name, domain] of limits) {
    const [, kind, nth] = /^(suit|wind)(\d)$/.exec(name)!;
    const title = LIMITS.nth(kind === 'suit' ? 'suit' : 'wind', Number(nth));
    const all: readonly string[] = kind === 'suit' ? SUITS : WINDS;
    const allowed: readonly string[] =
      'suits' in domain ? domain.suits : 'winds' in domain ? domain.winds : [];
    for (const value of all.filter((other) => !allowed.includes(other))) {
      await tap(
        editor.getByRole('group', { name: title }).getByRole('checkbox', { name: value, exact: true }),
      );
    }
  }
}
