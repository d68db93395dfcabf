import type { Keeping } from '../state/kept.ts';
import type { Offline } from '../state/offline.ts';
import type { PlanStores } from '../state/stores.ts';
import type { Messenger } from '../worker/client.ts';
import type { ModelMaker } from '../worker/modelMaker.ts';
import { App } from './App.tsx';
import { exposeKeeping } from './keep.ts';
import { mount } from './mount.tsx';
import { load } from './places/places.ts';
import { exposeRevision } from './revision.ts';

/** What differs between the page as it is served and the single file. */
export interface Edition {
  readonly stores: PlanStores;
  readonly keeping: Keeping;
  readonly offline: Offline;
  /** Starts what models the drilled ridge, when it is first wanted. */
  readonly wake: () => Messenger;
  /** Makes solids to hand over; null where there is no worker. */
  readonly maker: ModelMaker | null;
}

/** Keeps the drilled ridge in step with the passes. What does that is loaded with the first plan that has a rehearsal. */
function followRehearsal(stores: PlanStores, wake: () => Messenger): void {
  const begin = () => {
    if (stores.document.getState().plan.rehearsal === null) return;
    wait();
    void import('../state/drilled.ts').then(({ followPasses }) => followPasses(stores, wake));
  };
  const wait = stores.document.subscribe(begin);
  begin();
}

/** Puts the page on the screen, at the place where it was left. */
export async function start({ stores, keeping, offline, wake, maker }: Edition): Promise<void> {
  const element = document.documentElement;
  exposeKeeping(element, keeping);
  const ledger = exposeRevision(element, stores.live);
  // A place that cannot be loaded says so itself.
  await load(stores.session.getState()).catch(() => undefined);
  const root = document.getElementById('root');
  if (root) mount(root, <App stores={stores} ledger={ledger} plans={{ keeping, offline }} maker={maker} />);
  followRehearsal(stores, wake);
}
