import { FIRST_PLAN } from '../io/firstPlan.ts';
import { keepNothing } from '../state/kept.ts';
import { createOffline } from '../state/offline.ts';
import { createStores } from '../state/stores.ts';
import { onPage } from '../worker/onPage.ts';
import { start } from './start.tsx';

/** The page as one file, opened from a memory stick: it leaves nothing on the machine, and what needs a worker is left out or done on the page. */
void start({
  stores: createStores(FIRST_PLAN.plan),
  keeping: keepNothing(),
  offline: createOffline(),
  wake: onPage,
  maker: null,
});
