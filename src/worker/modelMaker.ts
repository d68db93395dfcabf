import type { ModelAnswer, ModelOutcome, ModelRequest, ModelWish } from './modelMessages.ts';

/** The part of a worker that is used. */
export interface ModelMessenger {
  postMessage: (request: ModelRequest) => void;
  addEventListener: ((kind: 'message', listener: (event: { data: ModelAnswer }) => void) => void) &
    ((kind: 'error', listener: () => void) => void);
}

/** Makes models one after the other; it always answers. */
export type ModelMaker = (wish: ModelWish) => Promise<ModelOutcome>;

/** A maker over a worker that `wake` starts when the first model is wanted, and again after one that died. */
export function modelMaker(wake: () => ModelMessenger): ModelMaker {
  let count = 0;
  let worker: ModelMessenger | null = null;
  const waiting = new Map<number, (made: ModelOutcome) => void>();
  const woken = (): ModelMessenger => {
    const one = wake();
    one.addEventListener('message', ({ data }) => {
      waiting.get(data.id)?.(data.made);
      waiting.delete(data.id);
    });
    one.addEventListener('error', () => {
      worker = null;
      for (const answer of waiting.values()) answer({ outcome: 'fault' });
      waiting.clear();
    });
    return one;
  };
  return (wish) =>
    new Promise((answer) => {
      count += 1;
      waiting.set(count, answer);
      worker ??= woken();
      worker.postMessage({ id: count, ...wish });
    });
}
