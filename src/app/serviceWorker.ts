import type { Offline } from '../state/offline.ts';
import { createOffline } from '../state/offline.ts';
import type { ScriptPolicy } from './policy.ts';

/** A worker that has been installed beside one in charge waits: it is a new version. */
function watch(registration: ServiceWorkerRegistration, newer: () => void): void {
  if (registration.waiting && registration.active) newer();
  registration.addEventListener('updatefound', () => {
    const found = registration.installing;
    found?.addEventListener('statechange', () => {
      if (found.state === 'installed' && registration.active) newer();
    });
  });
}

/**
 * Has the browser lay the whole page by, so that it works without a network from the next visit on; once everything else has loaded. A new version waits until
 * the user takes it. Where there are no service workers (or the page is not served securely) nothing happens.
 */
export function workOffline(policy: ScriptPolicy, root: HTMLElement): Offline {
  const workers: ServiceWorkerContainer | undefined = navigator.serviceWorker;
  if (!workers) return createOffline();
  let waiting: ServiceWorkerRegistration | null = null;
  const offline = createOffline(() => {
    workers.addEventListener('controllerchange', () => window.location.reload(), { once: true });
    waiting?.waiting?.postMessage({ type: 'SKIP_WAITING' });
  });
  const register = async () => {
    const registration = await workers.register(policy.createScriptURL('./sw.js'), { scope: './' });
    watch(registration, () => {
      waiting = registration;
      offline.set({ newer: true });
      root.dataset.newer = '';
    });
    await workers.ready;
    offline.set({ ready: true });
    root.dataset.offline = 'ready';
  };
  const begin = () => {
    register().catch(() => undefined);
  };
  if (document.readyState === 'complete') begin();
  else window.addEventListener('load', begin, { once: true });
  return offline;
}
