// The rounds that this browser stores: a list to open, delete, save and add to.
import { useSignal } from '@preact/signals';
import { useEffect, useMemo } from 'preact/hooks';
import type { RoundSummary } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { pathOf } from '../../app/routes/route.ts';
import { lastingStorage } from '../../storage/browser-storage.ts';
import { askToPersist, onRoundsChanged } from '../../storage/history/durability.ts';
import { Bar } from '../../ui/bar.tsx';
import { ConfirmButton } from '../../ui/confirm-button.tsx';
import { goInPage } from '../../ui/in-page-link.ts';
import { saveFile } from '../../ui/save-file.ts';
import { firstOf, type GroupBy, groupsOf } from './groups.ts';
import { AT_ONCE, type HistoryModel, historyModel } from './model.ts';
import { clockTime, findings, forgotten, placeName, ROUNDS, STORAGE_PROBLEMS } from './strings.ts';
import { Unfinished } from './unfinished.tsx';
import './history.css';

const SORTS = Object.keys(ROUNDS.sorts) as readonly GroupBy[];

export function HistoryScreen({ app }: { readonly app: App }) {
  const model = useMemo(
    () => historyModel({ notes: lastingStorage, pause: () => new Promise((done) => setTimeout(done)) }),
    [],
  );
  useEffect(() => {
    // Another tab may have stored a round meanwhile.
    const load = () => void model.load();
    load();
    document.addEventListener('visibilitychange', load);
    // The round just left may still be on its way to the storage.
    const end = onRoundsChanged(load);
    return () => {
      document.removeEventListener('visibilitychange', load);
      end();
    };
  }, [model]);
  const { rounds } = model.state.value;
  return (
    <>
      <Bar app={app} home />
      <main class="practice">
        <h1>{ROUNDS.title}</h1>
        <p>{ROUNDS.about}</p>
        <p>
          <PageLink app={app} route={{ kind: 'habits' }}>
            {ROUNDS.habits}
          </PageLink>
        </p>
        <Warnings model={model} />
        <Unfinished app={app} />
        {rounds === null ? (
          <p role="status">{ROUNDS.opening}</p>
        ) : (
          <RoundList app={app} model={model} rounds={rounds} />
        )}
        <FilePanel model={model} />
      </main>
    </>
  );
}

function Warnings({ model }: { readonly model: HistoryModel }) {
  const { problem, forgotten: lost, rounds, removed } = model.state.value;
  const mayVanish = useSignal(false);
  const some = (rounds?.length ?? 0) > 0;
  useEffect(() => {
    if (some) {
      void askToPersist().then((sure) => {
        mayVanish.value = !sure;
      });
    }
  }, [some, mayVanish]);
  return (
    <>
      {problem && (
        <p class="notice" role="alert">
          {STORAGE_PROBLEMS[problem]}
        </p>
      )}
      {lost > 0 && (
        <div class="notice" role="alert">
          <p>{forgotten(lost)}</p>
          <button type="button" onClick={() => void model.acknowledge()}>
            {ROUNDS.understood}
          </button>
        </div>
      )}
      {some && mayVanish.value && <p class="aside">{ROUNDS.mayVanish}</p>}
      <div class="undo" role="status">
        {removed.length > 0 && (
          <>
            <span>{ROUNDS.removed(removed.length)}</span>
            <button type="button" onClick={() => void model.putBack()}>
              {ROUNDS.undo}
            </button>
          </>
        )}
      </div>
    </>
  );
}

interface RoundListProps {
  readonly app: App;
  readonly model: HistoryModel;
  readonly rounds: readonly RoundSummary[];
}

function RoundList({ app, model, rounds }: RoundListProps) {
  const by = useSignal<GroupBy>('day');
  const count = useSignal(AT_ONCE);
  if (rounds.length === 0) return <p>{ROUNDS.none}</p>;
  const groups = firstOf(groupsOf(rounds, by.value), count.value);
  return (
    <>
      <fieldset class="round-sorts">
        <legend>{ROUNDS.sort}</legend>
        <div class="row">
          {SORTS.map((sort) => (
            <label key={sort} class="choice pill">
              <input
                type="radio"
                name="rounds-by"
                checked={by.value === sort}
                onChange={() => {
                  by.value = sort;
                }}
              />
              <span>{ROUNDS.sorts[sort]}</span>
            </label>
          ))}
        </div>
      </fieldset>
      {groups.map((group) => (
        <section key={group.name} class="round-group">
          <h2>{group.name}</h2>
          <ul>
            {group.rounds.map((round) => (
              <RoundRow key={round.id} app={app} model={model} round={round} />
            ))}
          </ul>
        </section>
      ))}
      {count.value < rounds.length && (
        <button
          type="button"
          onClick={() => {
            count.value += AT_ONCE;
          }}
        >
          {ROUNDS.more}
        </button>
      )}
    </>
  );
}

function RoundRow({
  app,
  model,
  round,
}: Pick<RoundListProps, 'app' | 'model'> & { readonly round: RoundSummary }) {
  const route = { kind: 'past-round', id: round.id } as const;
  return (
    <li class="round-row">
      <a href={pathOf(route)} onClick={(event) => goInPage(event, () => app.go(route))}>
        <span class="round-name">{placeName(round)}</span>
        <span class="spoken">, </span>
        <span class="round-facts">
          {clockTime(round.playedAt)} · {findings(round)}
          {round.card.id === 'house' ? '' : ` · ${round.card.name}`}
        </span>
      </a>
      <button type="button" onClick={() => void model.remove([round.id])}>
        {ROUNDS.remove}
        <span class="spoken">
          {' '}
          {placeName(round)}, {clockTime(round.playedAt)}
        </span>
      </button>
    </li>
  );
}

function FilePanel({ model }: { readonly model: HistoryModel }) {
  const { rounds, isWhole, busy, message } = model.state.value;
  const ids = (rounds ?? []).map(({ id }) => id);
  async function save() {
    const parts = await model.fileParts();
    const day = new Date().toISOString().slice(0, 10);
    if (parts) saveFile(`quadrille-rounds-${day}.jsonl`, 'application/jsonl', parts);
  }
  return (
    <section class="files">
      <h2>{ROUNDS.keep}</h2>
      <p>{ROUNDS.keepAbout}</p>
      {ids.length > 0 && (
        <button type="button" onClick={() => void save()}>
          {ROUNDS.save}
        </button>
      )}
      <div class="field">
        <label for="rounds-file">{ROUNDS.add}</label>
        <input
          id="rounds-file"
          type="file"
          accept=".jsonl,application/jsonl"
          onChange={(event) => {
            const input = event.currentTarget;
            const file = input.files?.[0];
            // The same file may be chosen again.
            if (file) void model.add(file).then(() => (input.value = ''));
          }}
        />
      </div>
      <p role="status">{busy ? ROUNDS.adding : message}</p>
      {isWhole && ids.length > 0 && (
        <div class="row">
          <ConfirmButton
            name={ROUNDS.removeAll}
            yes={ROUNDS.removeAllYes}
            no={ROUNDS.removeAllNo}
            onYes={() => model.remove(ids)}
          />
        </div>
      )}
    </section>
  );
}
