import { createStore, type StoreApi } from 'zustand/vanilla';
import type { Site } from '../core/anatomy/site.ts';
import type { Pass } from '../core/drilling/rehearsal.ts';
import type { TriangleMesh } from '../core/geometry/mesh.ts';
import type { DrillReport } from '../core/plan/drillReport.ts';
import type { Lesson } from '../core/teaching/lesson.ts';
import type { TrajectoryId } from '../core/teaching/trajectories.ts';
import { type BenchDraft, NO_BENCH } from './benchDraft.ts';
import { type Classroom, NO_CLASS } from './classroom.ts';
import { FIRST_SETTING, type Setting, type Sitting } from './sitting.ts';

/** The bone that is left after passes in a site, site frame, mm. */
export interface Drilled {
  readonly site: Site;
  readonly passes: readonly Pass[];
  readonly mesh: TriangleMesh;
}

export interface LiveState {
  /** Id of the handle, field or reading under the pointer or in focus, or null. */
  hover: string | null;
  /** Id of the handle being dragged, or null. */
  dragging: string | null;
  /** The next press on the model places the entry. */
  placing: boolean;
  /** Shown large, before a class. */
  projector: boolean;
  /** Numbers and sections are covered: the hand guesses first. */
  guessing: boolean;
  /** The driver is taken off the implant, to look. */
  driverOff: boolean;
  /** Marks on the implant say where it is in contact with its hole. */
  contactMarks: boolean;
  /** The last drilled ridge that the solid modeller has made, or null. */
  drilled: Drilled | null;
  /** The report of the rehearsal as it stands, or null while it is worked out or where there are no passes. */
  report: DrillReport | null;
  /** The bad trajectory that is shown to a class, and how much of it: 0 the plan, 1 its full size. */
  trajectory: TrajectoryId;
  amount: number;
  /** The lesson that is open, and which of its steps is shown. */
  lesson: Lesson | null;
  lessonStep: number;
  /** What a trajectory costs is covered until it is asked for. */
  answerHidden: boolean;
  /** A ring in ink follows the mouse. */
  pointer: boolean;
  /** The exercise that was opened to be done, or null; `sittingAt` says whether it still stands on the table. */
  sitting: Sitting | null;
  /** The exercise that is being set. */
  setting: Setting;
  /** The class whose attempts are looked at. */
  classroom: Classroom;
  /** What was measured at a drilled practice ridge, as far as it is typed. */
  bench: BenchDraft;
  /** How often a view was asked for: asking again brings a camera back that the hand has turned. */
  viewAsked: number;
  /** Grows by one with every change of document, session or live state: what is on screen has a number. */
  revision: number;
}

const FIELDS = [
  'hover',
  'dragging',
  'placing',
  'projector',
  'guessing',
  'driverOff',
  'contactMarks',
  'drilled',
  'report',
  'trajectory',
  'amount',
  'lesson',
  'lessonStep',
  'answerHidden',
  'pointer',
  'classroom',
  'sitting',
  'setting',
  'bench',
  'viewAsked',
] as const;

export interface LiveStore extends Pick<StoreApi<LiveState>, 'getState' | 'subscribe'> {
  getInitialState: () => LiveState;
  set: (change: Partial<Pick<LiveState, (typeof FIELDS)[number]>>) => void;
  /** Something is about to change with the next frame: what is on screen is no longer the newest. */
  touch: () => void;
}

/** Anything that tells of its changes. */
interface Watched {
  subscribe: (listener: () => void) => unknown;
}

/** What lives only as long as the pointer is where it is. Counts the changes of the `watched` stores too. */
export function createLiveStore(...watched: readonly Watched[]): LiveStore {
  const store = createStore<LiveState>(() => ({
    hover: null,
    dragging: null,
    placing: false,
    projector: false,
    guessing: false,
    driverOff: false,
    contactMarks: true,
    drilled: null,
    report: null,
    trajectory: 'too-facial',
    amount: 1,
    lesson: null,
    lessonStep: 0,
    answerHidden: false,
    classroom: NO_CLASS,
    sitting: null,
    setting: FIRST_SETTING,
    bench: NO_BENCH,
    pointer: false,
    viewAsked: 0,
    revision: 0,
  }));
  const bump = () => store.setState(({ revision }) => ({ revision: revision + 1 }));
  for (const other of watched) other.subscribe(bump);
  return {
    getState: store.getState,
    subscribe: store.subscribe,
    getInitialState: store.getInitialState,
    touch: bump,
    set: (change) => {
      const state = store.getState();
      const next = { ...state, ...change };
      if (FIELDS.every((key) => next[key] === state[key])) return;
      store.setState({ ...next, revision: state.revision + 1 });
    },
  };
}
