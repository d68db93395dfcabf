import { drillReport } from '../core/plan/drillReport.ts';
import type { Messenger } from './client.ts';
import type { DrillAnswer, DrillRequest } from './messages.ts';

function answer({ id, plan }: DrillRequest): DrillAnswer {
  try {
    return { id, kind: 'report', report: drillReport(plan) };
  } catch (error) {
    return { id, kind: 'fault', message: String(error) };
  }
}

/** Stands in for the worker where a browser allows none: the same report, worked out on the page once it has been drawn, and no solid. */
export function onPage(): Messenger {
  const heard: ((event: { data: DrillAnswer }) => void)[] = [];
  return {
    addEventListener: (_, listener) => heard.push(listener),
    postMessage: (request) => {
      requestAnimationFrame(() =>
        setTimeout(() => {
          const event = { data: answer(request) };
          for (const listener of heard) listener(event);
        }),
      );
    },
  };
}
