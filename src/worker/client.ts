import type { Plan } from '../core/plan/plan.ts';
import type { DrillAnswer, DrillRequest } from './messages.ts';

/** The part of a worker that is used. */
export interface Messenger {
  postMessage: (request: DrillRequest) => void;
  addEventListener: (kind: 'message', listener: (event: { data: DrillAnswer }) => void) => void;
}

/**
 * One plan is being worked on and one is wanted: a later wish takes the place of an earlier one that has not been begun, and an answer that is no longer wanted is
 * dropped. `give` gets the answers to the latest wish.
 */
export function drillClient(worker: Messenger, give: (answer: DrillAnswer) => void): (plan: Plan) => void {
  let count = 0;
  let busy = false;
  let wanted: DrillRequest | null = null;
  const send = (request: DrillRequest) => {
    busy = true;
    worker.postMessage(request);
  };
  worker.addEventListener('message', ({ data }) => {
    if (data.id === count) give(data);
    if (data.kind === 'solid') return;
    busy = false;
    if (!wanted) return;
    const next = wanted;
    wanted = null;
    send(next);
  });
  return (plan) => {
    count += 1;
    const request = { id: count, plan };
    if (busy) wanted = request;
    else send(request);
  };
}
