import { type ComponentType, lazy, Suspense, useLayoutEffect } from 'react';
import type { Teaching } from '../../state/session.ts';
import type { TeachStores } from '../../state/teach.ts';
import type { Bench, Page, Views } from './place.ts';

type Parts = typeof import('../../panels/teach/Bench.tsx');

/** A part of the bench that is loaded when a class is first taught. */
function part(name: keyof Parts): ComponentType<Views> {
  const Part = lazy<ComponentType<{ stores: TeachStores }>>(async () => {
    const parts = await import('../../panels/teach/Bench.tsx');
    return { default: parts[name] };
  });
  return ({ inTeach }) => (
    <Suspense fallback={null}>
      <Part stores={inTeach} />
    </Suspense>
  );
}

/** One bad trajectory after the other: the plan gone wrong, how much of it, and what it costs. */
const TRAJECTORIES: Bench = {
  kind: 'bench',
  layout: 'teach',
  names: { rail: 'panel.teach', profile: 'panel.amount', readings: 'panel.cost' },
  shown: ({ inTeach }) => inTeach,
  Sentence: part('TeachSentence'),
  Rail: part('TeachRail'),
  Beside: part('AmountPanel'),
  Under: part('CostPanel'),
};

const ExercisePage = lazy(() => import('../../panels/exercise/ExercisePage.tsx'));
const ClassPage = lazy(() => import('../../panels/class/ClassPage.tsx'));

/** An exercise, set from the plan on the table. */
const EXERCISE: Page = {
  kind: 'page',
  Page: ({ stores, ledger }) => {
    useLayoutEffect(() => ledger.absent('stage'), [ledger]);
    return <ExercisePage stores={stores} />;
  },
};

/** The attempts of a class, marked. */
const CLASS: Page = {
  kind: 'page',
  Page: ({ stores, ledger }) => {
    useLayoutEffect(() => ledger.absent('stage'), [ledger]);
    return <ClassPage stores={stores} />;
  },
};

const HandPage = lazy(() => import('../../panels/hand/HandPage.tsx'));

/** The user's own hand: the bench check, and its spread. */
const HAND: Page = {
  kind: 'page',
  Page: ({ stores, ledger }) => {
    useLayoutEffect(() => ledger.absent('stage'), [ledger]);
    return <HandPage stores={stores} />;
  },
};

/** *Teach*: what it puts on the page, by what is taught. Each begins with the words that lead to the others (`panels/teach/RoomHead.tsx`). */
export const TEACH: Readonly<Record<Teaching, Bench | Page>> = {
  trajectories: TRAJECTORIES,
  lesson: {
    ...TRAJECTORIES,
    names: { ...TRAJECTORIES.names, rail: 'panel.lesson' },
    Rail: part('LessonRail'),
  },
  exercise: EXERCISE,
  class: CLASS,
  hand: HAND,
};
