import type { SolidAnswer, SolidRequest } from './messages.ts';

/** The part of a worker that is used. */
export interface Messenger {
  postMessage: (request: SolidRequest) => void;
  addEventListener: (kind: 'message', listener: (event: { data: SolidAnswer }) => void) => void;
}

export type SolidWish = Omit<SolidRequest, 'id'>;

/**
 * One solid is in the making and one is wanted: a later wish takes the place of an earlier one that has not been begun, and an answer that is no longer wanted is
 * dropped. `give` gets the answer to the latest wish.
 */
export function solidClient(
  worker: Messenger,
  give: (answer: SolidAnswer) => void,
): (wish: SolidWish) => void {
  let count = 0;
  let making: number | null = null;
  let wanted: SolidRequest | null = null;
  const send = (request: SolidRequest) => {
    making = request.id;
    worker.postMessage(request);
  };
  worker.addEventListener('message', ({ data }) => {
    making = null;
    if (wanted) {
      const next = wanted;
      wanted = null;
      send(next);
    } else if (data.id === count) give(data);
  });
  return (wish) => {
    count += 1;
    const request = { ...wish, id: count };
    if (making === null) send(request);
    else wanted = request;
  };
}
