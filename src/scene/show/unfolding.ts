import { type Look, lookBetween } from './looks.ts';
import type { Frame } from './showCamera.ts';

/** A look of the drawing and the part of the picture it stands in. */
export interface Leaf {
  readonly look: Look;
  readonly frame: Frame;
}

/** How long one step takes to unfold, ms. */
const UNFOLDS = 1500;
/** The most of that time that goes by between two frames, ms: a slow picture, as the first of a step often is, does not swallow the motion. */
const LONGEST = 250;
/** The part of the way after which the words of the new step appear. */
const APPEARS = 0.75;
/** How far a hand may turn the drawing to either side, and up and down; degrees. */
const FREE = { azimuth: 80, elevation: 38 } as const;

const clamp = (v: number, most: number): number => Math.min(most, Math.max(-most, v));

function leafBetween(a: Leaf, b: Leaf, w: number): Leaf {
  const share = Math.min(1, w / 0.6);
  const soft = share * share * (3 - 2 * share);
  const at = (key: keyof Frame) => a.frame[key] + (b.frame[key] - a.frame[key]) * soft;
  return {
    look: lookBetween(a.look, b.look, w),
    frame: { left: at('left'), top: at('top'), width: at('width'), height: at('height') },
  };
}

/** Where the drawing is on its way from one leaf to the next, and how a hand has turned it. Times in ms of any one clock. */
export class Unfolding {
  private from: Leaf;
  private to: Leaf;
  private now: Leaf;
  private moves = false;
  /** When the last frame of the motion was, and how much of its time has gone by. */
  private last: number | null = null;
  private gone = 0;
  private share = 1;
  private turn = { azimuth: 0, elevation: 0 };

  constructor(leaf: Leaf) {
    this.from = leaf;
    this.to = leaf;
    this.now = leaf;
  }

  /** How far what is new has come to rest, 0 to 1: its words appear with that. */
  get rest(): number {
    return this.share;
  }

  get moving(): boolean {
    return this.moves;
  }

  /** What is to be drawn, as the hand has turned it. */
  get leaf(): Leaf {
    const { look, frame } = this.now;
    const { azimuth, elevation } = this.turn;
    return {
      frame,
      look: { ...look, azimuth: look.azimuth + azimuth, elevation: look.elevation + elevation },
    };
  }

  /** Unfolds another leaf from how it looks now, beginning with the next frame; at once where motion is not wanted. */
  unfold(leaf: Leaf, atOnce: boolean): void {
    this.from = this.leaf;
    this.turn = { azimuth: 0, elevation: 0 };
    this.to = leaf;
    this.now = atOnce ? leaf : this.from;
    this.moves = !atOnce;
    this.last = null;
    this.gone = 0;
    this.share = atOnce ? 1 : 0;
  }

  /** Another shape of the picture: the same leaf in another frame, without a motion of its own. */
  refit(frame: Frame): void {
    this.from = { ...this.from, frame };
    this.to = { ...this.to, frame };
    this.now = { ...this.now, frame };
  }

  /** Turns it by hand, degrees. */
  turnBy(azimuth: number, elevation: number): void {
    this.turn = {
      azimuth: clamp(this.turn.azimuth + azimuth, FREE.azimuth),
      elevation: clamp(this.turn.elevation + elevation, FREE.elevation),
    };
  }

  /** Goes on with the frame of a time. */
  goOn(time: number): void {
    if (!this.moves) return;
    this.gone += this.last === null ? 0 : Math.min(LONGEST, Math.max(0, time - this.last));
    this.last = time;
    const w = this.gone / UNFOLDS;
    this.now = w >= 1 ? this.to : leafBetween(this.from, this.to, w);
    this.share = Math.min(1, Math.max(0, (w - APPEARS) / (1 - APPEARS)));
    this.moves = w < 1;
  }
}
