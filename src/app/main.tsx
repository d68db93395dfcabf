import { DEMO_PLANS, MEAN_PLANS } from '../io/plans.ts';
import { followPasses } from '../state/drilled.ts';
import { createStores } from '../state/stores.ts';
import { modelMaker } from '../worker/modelMaker.ts';
import modelWorker from '../worker/models.worker.ts?worker&url';
import modeller from '../worker/solid.worker.ts?worker&url';
import { App } from './App.tsx';
import { mount } from './mount.tsx';
import { scriptPolicy } from './policy.ts';
import { exposeRevision } from './revision.ts';

/** The browser's own storage; where it is forbidden, even asking for it throws. */
function ownStorage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

/** A new user meets the first scenario. */
const stores = createStores(DEMO_PLANS[0].plan, ownStorage());
const policy = scriptPolicy();
followPasses(stores, () => new Worker(policy.createScriptURL(modeller), { type: 'module' }));
const maker = modelMaker(() => new Worker(policy.createScriptURL(modelWorker), { type: 'module' }));
const ledger = exposeRevision(document.documentElement, stores.live);
const root = document.getElementById('root');
const plans = { scenarios: DEMO_PLANS, sites: MEAN_PLANS };
if (root) mount(root, <App stores={stores} ledger={ledger} maker={maker} {...plans} />);
