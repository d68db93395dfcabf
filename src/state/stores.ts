import type { Plan } from '../core/plan/plan.ts';
import { createDocumentStore, type DocumentStore } from './document.ts';
import { createLiveStore, type LiveStore } from './live.ts';
import { createOwnStore, type OwnStore } from './own.ts';
import { createSessionStore, type Keep, type SessionStore } from './session.ts';

/** The scopes of state, by how long each lives: with the plan, with this browser (how it looks, and its user's own tries), with the pointer. */
export interface Stores<P> {
  document: DocumentStore<P>;
  session: SessionStore;
  own: OwnStore;
  live: LiveStore;
}

/** The stores of the page. */
export type PlanStores = Stores<Plan>;

export function createStores<P>(initial: P, keep?: Keep): Stores<P> {
  const document = createDocumentStore(initial);
  const session = createSessionStore(keep);
  return { document, session, own: createOwnStore(keep), live: createLiveStore(document, session) };
}
