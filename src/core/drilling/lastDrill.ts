import type { ImplantShape } from '../implant/shape.ts';
import type { Kit, NeckCutter } from './kit.ts';

type BoneClass = 1 | 2 | 3 | 4;

/** Which way the bone moved the last drill from the plain rule. */
export type BoneRule = 'plain' | 'dense' | 'soft';

/**
 * The last drill under an implant, by a rule of this project: common practice, no source. Torque in foam (Camargo 2017, read) goes the same way: 48.9 N·cm
 * dense, 22.6 soft and undersized, 11.7 soft and not.
 */
export interface LastDrill {
  readonly index: number;
  readonly rule: BoneRule;
  /** Widest the rule allows, mm. */
  readonly most: number;
  readonly source: 'ours-last-drill';
  readonly evidence: 'camargo-2017';
  /** How far the drill's wall stands outside the tapered apex, mm: no bone touches there; 0 where it does. */
  readonly apicalGap: number;
}

/** What a drill in dense bone leaves for the thread at least, mm of diameter (ours). */
const DENSE_LEAST = 0.2;
const SAME = 1e-9;

/**
 * The widest drill no wider than the implanted diameter less one thread depth, so that half of each thread cuts. Class 1 takes one wider where it stays 0.2 mm
 * under the implanted diameter, class 4 one narrower. Null: even the narrowest drill is too wide.
 */
export function lastDrill(kit: Kit, shape: ImplantShape, boneClass: BoneClass): LastDrill | null {
  const { drills } = kit;
  const most = shape.implantedDiameter - shape.thread.depth;
  const plain = drills.findLastIndex((d) => d.diameter <= most + SAME);
  if (plain < 0) return null;
  const denseMost = shape.implantedDiameter - DENSE_LEAST;
  const wider = drills[plain + 1];
  const found = (index: number, rule: BoneRule, limit: number): LastDrill => ({
    index,
    rule,
    most: limit,
    source: 'ours-last-drill',
    evidence: 'camargo-2017',
    apicalGap: Math.max(0, (drills[index].diameter - shape.apicalDiameter) / 2),
  });
  if (boneClass === 1 && wider && wider.diameter <= denseMost + SAME)
    return found(plain + 1, 'dense', denseMost);
  if (boneClass === 4 && plain > 0) return found(plain - 1, 'soft', most);
  return found(plain, 'plain', most);
}

/** A cutter whose three numbers each come this near to the neck's fits it, mm (ours). */
const FIT = 0.1;

/** Greatest difference between a cutter and an implant's neck, mm. */
const misfit = (cutter: NeckCutter, shape: ImplantShape): number =>
  Math.max(
    Math.abs(cutter.neckDiameter - shape.implantedDiameter),
    Math.abs(cutter.shoulderDiameter - shape.platformDiameter),
    Math.abs(cutter.height - shape.transmucosalLength),
  );

/** The kit's cutter that fits an implant's neck best, or null: none fits. */
export function fittingNeck(kit: Kit, shape: ImplantShape): number | null {
  let best: number | null = null;
  kit.necks.forEach((cutter, i) => {
    const off = misfit(cutter, shape);
    if (off > FIT + SAME) return;
    if (best === null || off < misfit(kit.necks[best], shape)) best = i;
  });
  return best;
}
