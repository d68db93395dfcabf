import { FIRST_PLAN } from '../io/firstPlan.ts';
import { createOffline } from '../state/offline.ts';
import { createStores } from '../state/stores.ts';
import { modelMaker } from '../worker/modelMaker.ts';
import modelWorker from '../worker/models.worker.ts?worker&url';
import modeller from '../worker/solid.worker.ts?worker&url';
import { recover } from './keep.ts';
import { scriptPolicy } from './policy.ts';
import { workOffline } from './serviceWorker.ts';
import { start } from './start.tsx';

/** The browser's own storage; where it is forbidden, even asking for it throws. */
function ownStorage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

/** The page as it is served: it goes on with the plan that was kept last; a new user meets the first scenario. */
async function open(): Promise<void> {
  const policy = scriptPolicy();
  const { plan, follow } = await recover();
  const stores = createStores(plan ?? FIRST_PLAN.plan, ownStorage());
  await start({
    stores,
    keeping: follow(stores.document),
    offline: import.meta.env.PROD ? workOffline(policy, document.documentElement) : createOffline(),
    wake: () => new Worker(policy.createScriptURL(modeller), { type: 'module' }),
    maker: modelMaker(() => new Worker(policy.createScriptURL(modelWorker), { type: 'module' })),
  });
}

void open();
