import { lazy, useLayoutEffect } from 'react';
import { HandSection } from '../../panels/HandSection.tsx';
import { AmountPanel, CostPanel, LessonRail, TeachRail, TeachSentence } from '../../panels/teach/Bench.tsx';
import type { Teaching } from '../../state/session.ts';
import { teachStores } from '../../state/teach.ts';
import { say } from '../../words/sayTeach.ts';
import type { Bench, Page } from './place.ts';

/** One bad trajectory after the other: the plan gone wrong, how much of it, and what it costs. */
const TRAJECTORIES: Bench = {
  kind: 'bench',
  layout: 'teach',
  names: { rail: say('panel.teach'), profile: say('panel.amount'), readings: say('panel.cost') },
  shown: teachStores,
  Sentence: ({ stores }) => <TeachSentence stores={teachStores(stores)} />,
  Rail: ({ stores }) => <TeachRail stores={teachStores(stores)} />,
  Section: ({ stores }) => <HandSection stores={teachStores(stores)} />,
  Beside: ({ stores }) => <AmountPanel stores={teachStores(stores)} />,
  Under: ({ stores }) => <CostPanel stores={teachStores(stores)} />,
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
    names: { ...TRAJECTORIES.names, rail: say('panel.lesson') },
    Rail: ({ stores }) => <LessonRail stores={teachStores(stores)} />,
  },
  exercise: EXERCISE,
  class: CLASS,
  hand: HAND,
};
