import { expect, it } from 'vitest';
import type { Plan } from '../../src/core/plan/plan.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { drillClient, type Messenger } from '../../src/worker/client.ts';
import type { DrillAnswer, DrillRequest } from '../../src/worker/messages.ts';

/** A worker whose answers the test gives. */
function fakeWorker() {
  const asked: DrillRequest[] = [];
  let listener: (event: { data: DrillAnswer }) => void = () => {};
  const worker: Messenger = {
    postMessage: (request) => asked.push(request),
    addEventListener: (_, given) => {
      listener = given;
    },
  };
  return { worker, asked, say: (data: DrillAnswer) => listener({ data }) };
}

const plans: Plan[] = DEMO_PLANS.map(({ plan }) => plan);
const fault = (id: number): DrillAnswer => ({ id, kind: 'fault', message: 'none' });
const solid = (id: number): DrillAnswer => ({
  id,
  kind: 'solid',
  positions: new Float64Array(),
  normals: new Float64Array(),
  triangles: new Uint32Array(),
});

it('one is made and one is wanted: the latest wish takes the place of those between', () => {
  const { worker, asked, say } = fakeWorker();
  const given: number[] = [];
  const ask = drillClient(worker, ({ id }) => given.push(id));
  for (const plan of plans.slice(0, 4)) ask(plan);
  expect(asked.map(({ plan }) => plan)).toEqual([plans[0]]);
  say(fault(1));
  expect(asked.map(({ plan }) => plan)).toEqual([plans[0], plans[3]]);
  expect(given).toEqual([]);
  say(solid(4));
  expect(asked).toHaveLength(2);
  say(fault(4));
  expect(given).toEqual([4, 4]);
});

it('goes on after a fault', () => {
  const { worker, asked, say } = fakeWorker();
  const ask = drillClient(worker, () => {});
  ask(plans[0]);
  say(fault(1));
  ask(plans[1]);
  expect(asked.map(({ plan }) => plan)).toEqual([plans[0], plans[1]]);
});
