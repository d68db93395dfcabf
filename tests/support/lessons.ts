import type { Lesson, LessonStep } from '../../src/core/teaching/lesson.ts';
import type { TrajectoryId } from '../../src/core/teaching/trajectories.ts';
import { SITES_DEMO } from './demoPlans.ts';

/** The lessons of `assets/lessons`, as code; `npm run assets` writes them. */
const [lateral, socket, premolar, thin] = SITES_DEMO.map(({ plan }) => plan);

const shown = (words: string, rest: Partial<LessonStep> = {}): LessonStep => ({
  words,
  plan: 0,
  view: 'mesial',
  bone: 'cut',
  gum: false,
  trajectory: null,
  ask: false,
  reading: null,
  ...rest,
});

const wrong = (
  id: TrajectoryId,
  percent: number,
  words: string,
  rest: Partial<LessonStep> = {},
): LessonStep => shown(words, { trajectory: { id, percent }, ...rest });

const facialWall: Lesson = {
  title: 'A millimetre facially',
  words:
    'A narrow ridge with an undercut. What a small shift costs, what a small lean costs, and what the crown tells of it.',
  plans: [lateral],
  steps: [
    shown('The ridge as it stands: narrow, hollow facially, a root close on either side.', { bone: 'whole' }),
    shown('The plan. Where is the wall thinnest, and whose limit does it come near to?', {
      reading: 'facial-wall-thinnest',
    }),
    wrong(
      'too-facial',
      30,
      'A little over half a millimetre facially. Guess the thinnest wall before you see it.',
      {
        ask: true,
        reading: 'facial-wall-thinnest',
      },
    ),
    wrong('too-facial', 100, 'Two millimetres. What would be seen in the mouth, now and after a year?', {
      ask: true,
    }),
    wrong('apex-facial', 50, 'The entry is right; the apex is not. Which wall breaks first, and how deep?', {
      ask: true,
      reading: 'facial-wall-apex',
    }),
    wrong('facial-and-upright', 100, 'A little of both. Look at the crown: does it warn you?', {
      view: 'facial',
      bone: 'translucent',
      ask: true,
      reading: 'incisal-line-offset',
    }),
    wrong('distal-root', 60, 'The other way out of a narrow ridge: the root of 13.', {
      view: 'facial',
      bone: 'translucent',
      reading: 'root-distal',
    }),
    wrong('along-crown', 100, 'Along the crown. Here the plan stands almost so already: what does it cost?', {
      ask: true,
    }),
    shown('The plan again. What would you look at after the first drill?'),
  ],
};

const freshSocket: Lesson = {
  title: 'The void is no bone',
  words: 'A fresh socket. The root’s place is not the implant’s: what happens where one follows it.',
  plans: [socket],
  steps: [
    shown(
      'A fresh socket after a root fracture. The facial wall is thin; the void in front of the implant is no bone.',
      {
        gum: true,
      },
    ),
    shown('The plan: in the palatal wall, the gap left in front.', { reading: 'socket-gap-facial' }),
    wrong('centred-in-socket', 30, 'The drill slides into the void. What is the first to go?', { ask: true }),
    wrong('centred-in-socket', 100, 'In the middle of the void. How much thread stands in bone?', {
      ask: true,
      reading: 'bone-contact',
    }),
    wrong(
      'off-palatal-wall',
      40,
      'The palatal wall is dense; the drill leans off it. Until which depth could it be mended?',
      {
        ask: true,
      },
    ),
    wrong('off-palatal-wall', 100, 'The same to the end: each drill follows the one before.', {
      reading: 'facial-wall-apex',
    }),
    wrong('too-palatal', 100, 'So keep palatally? Not for ever: what lies there?', {
      view: 'incisal',
      ask: true,
      reading: 'canal',
    }),
    wrong('into-canal', 100, 'The canal, straight.', { view: 'axis', reading: 'canal' }),
    wrong('mesial-root', 40, 'And mesially the root of 11 is near.', {
      view: 'facial',
      bone: 'translucent',
      reading: 'root-mesial',
    }),
    shown('The plan again.'),
  ],
};

const depthAndDrill: Lesson = {
  title: 'Depth, and what a drill cannot give back',
  words: 'A site with thin gum, then one with plenty of bone: level, length, diameter and the hole itself.',
  plans: [thin, premolar],
  steps: [
    shown('Thin gum: the shoulder’s level decides what shows.', {
      gum: true,
      reading: 'shoulder-to-gum-margin',
    }),
    wrong(
      'too-shallow',
      100,
      'Left three millimetres too high. No metal shows yet: what is lost all the same?',
      {
        gum: true,
        view: 'facial',
        ask: true,
        reading: 'shoulder-to-gum-margin',
      },
    ),
    wrong('too-deep', 60, 'Seated too deep. Nothing shows: what is the price?', {
      gum: true,
      ask: true,
      reading: 'shoulder-to-gum-margin',
    }),
    wrong('past-floor', 100, 'An implant too long for the site. Which drill could still be gone back from?', {
      ask: true,
      reading: 'apex-to-floor',
    }),
    wrong('neck-turned', 100, 'Right in every wall, and the neck faces the wrong way.', {
      view: 'axis',
      reading: 'neck-facing',
    }),
    shown('Another site, with plenty of bone.', { plan: 1 }),
    wrong('apex-facial', 100, 'Fifteen degrees here. Is it much?', { plan: 1, ask: true }),
    wrong('oval-hole', 60, 'The last drill pressed against the wall while it ran. Is bone given back?', {
      plan: 1,
      ask: true,
    }),
    wrong('too-wide', 100, 'A wider implant, since there is bone. Facially there is; and toward the roots?', {
      plan: 1,
      view: 'facial',
      bone: 'translucent',
      ask: true,
      reading: 'root-mesial',
    }),
    wrong('along-ridge', 100, 'Along the ridge: in this site next to nothing. Say why.', {
      plan: 1,
      ask: true,
    }),
  ],
};

export const LESSON_FILES: readonly { readonly id: string; readonly lesson: Lesson }[] = [
  { id: 'lesson-1-facial-wall', lesson: facialWall },
  { id: 'lesson-2-fresh-socket', lesson: freshSocket },
  { id: 'lesson-3-depth-and-drill', lesson: depthAndDrill },
];
