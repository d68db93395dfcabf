import { createStores } from '../state/stores.ts';
import { App } from './App.tsx';
import { mount } from './mount.tsx';
import { exposeRevision } from './revision.ts';

/** The browser's own storage; where it is forbidden, even asking for it throws. */
function ownStorage(): Storage | undefined {
  try {
    return window.localStorage;
  } catch {
    return undefined;
  }
}

const stores = createStores({ title: '' }, ownStorage());
const ledger = exposeRevision(document.documentElement, stores.live);
const root = document.getElementById('root');
if (root) mount(root, <App stores={stores} ledger={ledger} />);
