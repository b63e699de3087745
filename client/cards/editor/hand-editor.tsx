// One hand of a card being put together: its one line of text, its example in tiles, the pad, the questions, its problems.
import { type Signal, useSignal } from '@preact/signals';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'preact/hooks';
import {
  type CardFile,
  type CardPattern,
  canonicalPattern,
  exampleOf,
  type Face,
  type PatternBody,
  readShorthand,
  type ShorthandProblem,
  writeShorthand,
} from '../../../shared-engine/index.ts';
import { type HandReport, reportOf } from '../own/counting.ts';
import { GroupPanel, Question } from './group-panel.tsx';
import { Groups } from './groups.tsx';
import { Limits } from './limits.tsx';
import {
  type Answers,
  answeredAs,
  answersIn,
  KINDS,
  kindsOf,
  type Laid,
  type Shown,
  withGroup,
} from './meaning.ts';
import { Pad, type PadProps } from './pad.tsx';
import { ASK, HAND, problemText } from './strings.ts';

interface HandEditorProps {
  readonly parameters: CardFile['parameters'];
  readonly pattern: CardPattern;
  readonly title: string;
  /** `name` joins edits that follow each other into one step back. */
  readonly onChange: (body: PatternBody, name?: string) => void;
  readonly onNext: () => void;
  readonly children: preact.ComponentChildren;
}

export function HandEditor({ parameters, pattern, title, onChange, onNext, children }: HandEditorProps) {
  const { shown, roll, show } = useExample(parameters, pattern);
  const chosen = useSignal<number | null>(null);
  const box = useRef<HTMLElement>(null);
  useEffect(() => {
    box.current?.scrollIntoView({ block: 'nearest' });
    // A phone would cover the pad with its own keys, so there the hand itself is where the reader goes on.
    if (!isTyping()) box.current?.focus({ preventScroll: true });
  }, []);
  const wanted = useSignal<Partial<Answers>>({});
  const report = reportOf(pattern, parameters);

  function take(next: Shown) {
    show(next);
    onChange(next.pattern);
  }

  const meant = answersIn(shown.pattern);
  const answers: Answers = { ...withUsual(meant), ...wanted.value };
  const lay = (laid: Laid) => take(withGroup(shown, laid, answers));
  const answer = (kind: keyof Answers, part: Partial<Answers>) => {
    wanted.value = { ...wanted.value, ...part };
    take(answeredAs(shown, kind, { ...answers, ...part }));
  };
  const kinds = KINDS.filter((kind) => shown.pattern.groups.some(({ tile }) => kindsOf(tile).includes(kind)));
  const year = parameters.year === undefined ? null : String(parameters.year);
  return (
    <section ref={box} class="hand-editor" aria-label={title} tabIndex={-1}>
      <TypedField pattern={pattern} onChange={onChange} onNext={onNext} />
      <Example shown={shown} report={report} chosen={chosen} onRoll={roll} />
      {chosen.value !== null && (
        <GroupPanel
          shown={shown}
          nth={chosen.value}
          onChange={(next, nth) => {
            chosen.value = nth;
            take(next);
          }}
        />
      )}
      <LaterPad year={year} onLay={lay} />
      {kinds.map((kind) => (
        <Question
          key={kind}
          name={`all-${kind}`}
          kind={kind}
          words={ASK}
          now={wanted.value[kind] ?? meant[kind]}
          without="own"
          onAnswer={(part) => answer(kind, part)}
        />
      ))}
      <Limits pattern={shown.pattern} onChange={(body) => onChange(body)} />
      <HandWorth pattern={pattern} onChange={onChange} />
      <div class="row">
        <button type="button" class="primary" onClick={onNext}>
          {HAND.next}
        </button>
        {children}
      </div>
    </section>
  );
}

/** The pad a moment after the rest, and never drawn anew for what does not concern it: it is most of what there is. */
function LaterPad({ year, onLay }: PadProps) {
  const isDue = useSignal(false);
  useEffect(() => {
    const timer = setTimeout(() => {
      isDue.value = true;
    });
    return () => clearTimeout(timer);
  }, [isDue]);
  const latest = useRef(onLay);
  latest.current = onLay;
  const pad = useMemo(() => <Pad year={year} onLay={(laid) => latest.current(laid)} />, [year]);
  return isDue.value ? pad : null;
}

interface ExampleProps {
  readonly shown: Shown;
  readonly report: HandReport;
  /** Place of the group that is open by itself. */
  readonly chosen: Signal<number | null>;
  readonly onRoll: () => void;
}

/** The hand as an example of it, its sum, and what is wrong with it. */
function Example({ shown, report, chosen, onRoll }: ExampleProps) {
  return (
    <>
      <div class="hand-example">
        {shown.pattern.groups.length === 0 ? (
          <p class="about">{HAND.empty}</p>
        ) : (
          <Groups
            shown={shown}
            report={report}
            chosen={chosen.value}
            onChoose={(nth) => {
              chosen.value = nth;
            }}
          />
        )}
        <p role="status" class={report.tiles === 14 ? 'sum whole' : 'sum'}>
          {HAND.tiles(report.tiles)}
          {!report.isCounted && ` · ${HAND.counting}`}
          {report.hands > 0 && ` · ${HAND.ways(report.hands)}`}
        </p>
        {shown.pattern.groups.length > 0 && (
          <button type="button" onClick={onRoll}>
            {HAND.roll}
          </button>
        )}
      </div>
      <ul class="hand-problems" aria-live="polite">
        {report.problems.map((problem) => (
          <li key={`${problem.code}-${problem.group}`}>
            {problem.group === null
              ? problemText(problem, report.tiles)
              : HAND.inGroup(problem.group, problemText(problem, report.tiles))}
          </li>
        ))}
      </ul>
    </>
  );
}

type WorthProps = Pick<HandEditorProps, 'pattern' | 'onChange'>;

function HandWorth({ pattern, onChange }: WorthProps) {
  return (
    <div class="row hand-worth">
      <label class="points-field">
        {HAND.points}
        <input
          type="number"
          inputMode="numeric"
          min={0}
          max={1000}
          value={pattern.points}
          onFocus={(event) => event.currentTarget.select()}
          onInput={(event) => {
            const points = Math.round(Number(event.currentTarget.value));
            if (points >= 0 && points <= 1000)
              onChange({ ...bodyOf(pattern), points }, `points-${pattern.id}`);
          }}
        />
      </label>
      <label class="choice">
        <input
          type="checkbox"
          checked={pattern.concealed}
          onChange={(event) => onChange({ ...bodyOf(pattern), concealed: event.currentTarget.checked })}
        />
        <span>{HAND.concealed}</span>
      </label>
    </div>
  );
}

/** The example that is shown: what was laid by hand, or one that is rolled for what was typed. */
function useExample(parameters: CardFile['parameters'], pattern: CardPattern) {
  const faces = useSignal<{ readonly of: string; readonly faces: readonly Face[] } | null>(null);
  const rolls = useSignal(0);
  const text = writeShorthand({ ...bodyOf(pattern), points: 0, concealed: false });
  const rolled = () =>
    exampleOf(pattern, parameters, `${pattern.id}-${rolls.value}`)?.faces ??
    pattern.groups.map((): Face => 'flower');
  const known = faces.value?.of === text ? faces.value.faces : rolled();
  const shown: Shown = { pattern: canonicalPattern(pattern), faces: known };
  return {
    shown,
    roll() {
      rolls.value++;
      faces.value = null;
    },
    show(next: Shown) {
      const of = writeShorthand({ ...next.pattern, points: 0, concealed: false });
      faces.value = { of, faces: next.faces };
    },
  };
}

function withUsual(meant: ReturnType<typeof answersIn>): Answers {
  return {
    numbers: meant.numbers ?? 'exact',
    suits: meant.suits ?? 'exact',
    winds: meant.winds ?? 'exact',
    dragons: meant.dragons ?? 'exact',
  };
}

export function bodyOf({ points, concealed, groups, where }: PatternBody): PatternBody {
  return where === undefined ? { points, concealed, groups } : { points, concealed, groups, where };
}

/** Whoever has a mouse has a keyboard and goes on typing. */
function isTyping(): boolean {
  return window.matchMedia('(pointer: fine)').matches;
}

interface TypedFieldProps {
  readonly pattern: CardPattern;
  readonly onChange: (body: PatternBody, name?: string) => void;
  readonly onNext: () => void;
}

/** While it is typed in, it shows what is typed; otherwise the hand as the shorthand writes it. */
function TypedField({ pattern, onChange, onNext }: TypedFieldProps) {
  const field = useRef<HTMLInputElement>(null);
  const typed = useSignal<string | null>(null);
  const problems = useSignal<readonly ShorthandProblem[]>([]);
  // Before the next key arrives, so that nobody who types on loses one.
  useLayoutEffect(() => {
    if (isTyping()) field.current?.focus({ preventScroll: true });
  }, [pattern.id]);
  const written = pattern.groups.length === 0 ? '' : writeShorthand(pattern);
  return (
    <div class="field">
      <label for="typed-hand">{HAND.typed}</label>
      <input
        ref={field}
        id="typed-hand"
        autocomplete="off"
        autocapitalize="none"
        spellcheck={false}
        value={typed.value ?? written}
        aria-invalid={problems.value.length > 0}
        aria-describedby="typed-problems typed-about"
        onInput={(event) => {
          typed.value = event.currentTarget.value;
          const read = readShorthand(typed.value);
          problems.value = read.ok ? [] : read.problems;
          if (read.ok) onChange(read.pattern, `typed-${pattern.id}`);
        }}
        onBlur={() => {
          if (problems.value.length === 0) typed.value = null;
        }}
        onKeyDown={(event) => {
          if (event.key !== 'Enter' || problems.value.length > 0) return;
          event.preventDefault();
          onNext();
        }}
      />
      <ul id="typed-problems" class="hand-problems" aria-live="polite">
        {problems.value.map(({ group, message }) => (
          <li key={message}>{group === null ? message : HAND.inGroup(group, message)}</li>
        ))}
      </ul>
      <p id="typed-about" class="about">
        {HAND.typedAbout}
      </p>
    </div>
  );
}
