import { ENOUGH_ATTEMPTS, type OwnAttempt, WAYS, type Way } from '../spread/hand.ts';
import { type Hand, handFromMeans, ownHand } from '../spread/straying.ts';
import { PUBLISHED_SPREADS, type PublishedSpread, type PublishedValue } from './published.ts';

/** A hand to judge a plan by: of a study that gives platform and angle, or the user's own in one way. */
export type HandChoice =
  | {
      readonly id: string;
      readonly hand: Hand;
      readonly published: PublishedSpread;
      /** Its global distance at the platform and its angle, as published. */
      readonly platform: PublishedValue;
      readonly angle: PublishedValue;
    }
  | { readonly id: Way; readonly hand: Hand; readonly attempts: number };

/** A mean, or the middle of the groups' means. */
const middle = (value: PublishedValue): number =>
  typeof value.mean === 'number' ? value.mean : (value.mean[0] + value.mean[1]) / 2;

function ofStudy(published: PublishedSpread): HandChoice[] {
  const { 'platform-global': platform, angle } = published.values;
  if (!platform || !angle) return [];
  const hand = handFromMeans(middle(platform), middle(angle));
  return [{ id: published.id, published, platform, angle, hand }];
}

/** All hands to choose from: the own ones first, then the published ones. */
export function handChoices(attempts: readonly OwnAttempt[]): HandChoice[] {
  const own = WAYS.flatMap((way) => {
    const hand = ownHand(attempts, way);
    return hand ? [{ id: way, hand, attempts: attempts.filter((one) => one.way === way).length }] : [];
  });
  return [...own, ...PUBLISHED_SPREADS.flatMap(ofStudy)];
}

/** The one to begin with: the own hand at the bench where it is known well enough, else clinicians freehand. */
export function firstChoice(choices: readonly HandChoice[]): HandChoice {
  const own = choices.find(
    (one) => one.id === 'bench' && 'attempts' in one && one.attempts >= ENOUGH_ATTEMPTS,
  );
  const freehand = choices.find(
    (one) => 'published' in one && one.published.who === 'clinicians' && one.published.guide === 'freehand',
  );
  return own ?? freehand ?? choices[0];
}
