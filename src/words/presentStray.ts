import { totalLength } from '../core/implant/shape.ts';
import type { Plan } from '../core/plan/plan.ts';
import type { Cloud } from '../core/spread/cloud.ts';
import { deviation } from '../core/spread/deviation.ts';
import type { Forgiving } from '../core/spread/forgiving.ts';
import type { HandOutlook } from '../core/spread/handOutlook.ts';
import { strayOf } from '../core/spread/straying.ts';
import type { HandChoice } from '../core/teaching/hands.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { publishedLine, publishedText } from './presentMark.ts';
import { sayAdvance, sayShift, sayTilt } from './sayEdit.ts';
import { say } from './sayStray.ts';

const count = (value: number): string => formatNumber({ value, unit: 'count' });
const share = (value: number): string => formatQuantity({ value: value * 100, unit: 'percent' });
const inSds = (value: number): string => formatNumber({ value, unit: 'ratio' });

/** A hand as one chooses it. */
export function sayHand(choice: HandChoice): string {
  if (!('published' in choice)) return say(`stray.own.${choice.id}`, { count: count(choice.attempts) });
  const { who, guide, where } = choice.published;
  return say('stray.published', {
    who: say(`published.who.${who}`),
    guide: say(`published.guide.${guide}`),
    where: say(`published.where.${where}`),
    platform: publishedText('platform-global', choice.platform),
    angle: publishedText('angle', choice.angle),
  });
}

/** Where its numbers come from, and what was made of them. */
export const presentHandSource = (choice: HandChoice): string[] =>
  'published' in choice ? [publishedLine(choice.published), say('stray.note')] : [say('stray.noteOwn')];

/** How far the work is. */
export const sayWorking = ({ done, there }: HandOutlook): string =>
  there
    ? say('stray.done', { count: count(there.placed.length) })
    : say('stray.working', { share: share(done) });

export const sayAny = ({ any, placed }: Cloud): string =>
  any === 0
    ? say('stray.none', { count: count(placed.length) })
    : say('stray.any', { share: share(any), count: count(placed.length) });

/** The same of the pose that forgives most. */
export const sayAnyThere = ({ any, placed }: Cloud): string =>
  say('stray.anyThere', { share: share(any), count: count(placed.length) });

/** The limits a hand breaks most often, as the plan stands and at the pose that forgives it most. */
export function presentCrossed({ cloud, there }: HandOutlook, most: number) {
  const thereOf = (id: string): string =>
    there ? share(there.crossed.find((one) => one.id === id)?.share ?? 0) : '';
  return (cloud?.crossed ?? []).slice(0, most).map(({ id, share: here }) => ({
    id,
    label: say(`reading.${id}`),
    here: share(here),
    there: thereOf(id),
  }));
}

/** What the search found: a sentence, and the moves that lead there (none where it is the plan's own pose). */
export function presentForgiving(plan: Plan, forgiving: Forgiving | null) {
  if (!forgiving) return { sentence: say('stray.unmoved'), moves: [] };
  const { before, after, pose } = forgiving;
  const reading = say(`reading.${after.id}`);
  if (pose === plan.pose)
    return { sentence: say('stray.held', { reading, score: inSds(after.score) }), moves: [] };
  const stray = strayOf(deviation(plan.pose, pose, totalLength(plan.implant), 0));
  return {
    sentence: say('stray.lifts', { before: inSds(before.score), after: inSds(after.score), reading }),
    moves: [
      sayShift(stray.mesiodistal, stray.faciopalatal),
      sayTilt(stray.tiltMesiodistal, stray.tiltFaciopalatal),
      sayAdvance(stray.depth),
    ],
  };
}
