import { DEMO_PLANS, MEAN_PLANS } from '../io/plans.ts';
import { followPasses } from '../state/drilled.ts';
import type { Keeping } from '../state/kept.ts';
import type { Offline } from '../state/offline.ts';
import type { PlanStores } from '../state/stores.ts';
import type { Messenger } from '../worker/client.ts';
import type { ModelMaker } from '../worker/modelMaker.ts';
import { App } from './App.tsx';
import { exposeKeeping } from './keep.ts';
import { mount } from './mount.tsx';
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

/** Puts the page on the screen. */
export function start({ stores, keeping, offline, wake, maker }: Edition): void {
  const element = document.documentElement;
  followPasses(stores, wake);
  exposeKeeping(element, keeping);
  const ledger = exposeRevision(element, stores.live);
  const root = document.getElementById('root');
  const plans = { scenarios: DEMO_PLANS, sites: MEAN_PLANS, keeping, offline };
  if (root) mount(root, <App stores={stores} ledger={ledger} plans={plans} maker={maker} />);
}
