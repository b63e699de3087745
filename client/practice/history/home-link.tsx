// The way from a round of a class to its deal, where the teacher lets players play it again at home.
import { useEffect, useState } from 'preact/hooks';
import type { RoundSummary } from '../../../shared-engine/index.ts';
import type { App } from '../../app/routes/app.ts';
import { PageLink } from '../../app/routes/page-link.tsx';
import { bringHome } from '../../room/bring-home.ts';
import { ROUNDS } from './strings.ts';

interface HomeLinkProps {
  readonly app: App;
  readonly round: Pick<RoundSummary, 'table' | 'number'>;
}

/** Nothing where the deal is not on this device, and the server does not send it either. */
export function HomeLink({ app, round: { table, number } }: HomeLinkProps) {
  const [isHere, setHere] = useState(false);
  useEffect(() => {
    let mounted = true;
    void bringHome(table, number).then((brought) => mounted && setHere(brought === 'here'));
    return () => {
      mounted = false;
    };
  }, [table, number]);
  if (!isHere) return null;
  return (
    <PageLink app={app} route={{ kind: 'home-deal', room: table, round: number }}>
      {ROUNDS.again}
    </PageLink>
  );
}
