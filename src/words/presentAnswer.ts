import type { Reading } from '../core/measure/reading.ts';
import type { FixingAnswer } from '../core/plan/crownAnswer.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import type { DepthTurns } from '../core/plan/partTurns.ts';
import type { ExitMeaning } from '../core/restoration/exitMeaning.ts';
import { formatQuantity } from './format.ts';
import { materialName, presentDepthTurns, presentExit } from './presentCrown.ts';
import { presentReading, quantityOf } from './presentReading.ts';
import { say } from './sayCrown.ts';

/** The size of a reading, its sign said by the words round it. */
const sizeOf = (reading: Reading): string => {
  const quantity = quantityOf(reading);
  const limits = (quantity.limits ?? []).map((limit) => (quantity.value < 0 ? -limit : limit));
  return formatQuantity({ ...quantity, value: Math.abs(quantity.value), limits });
};

function axisText({ axis }: FixingAnswer): string {
  if (axis.kind === 'one-piece') return say('crown.onePiece');
  if (axis.kind === 'screw') return presentExit(axis.exit);
  const offset = sizeOf(axis.offset);
  if (axis.status === 'within') return say('crown.cement.on', { offset });
  return say((axis.offset.value ?? 0) > 0 ? 'crown.cement.facial' : 'crown.cement.palatal', { offset });
}

function depthText({ fixing, depth }: FixingAnswer): string {
  const { reading, side } = depth;
  const shown = presentReading(reading).quantity;
  if (fixing === 'screw-gum') return say(`crown.depth.screw-gum.${side}`, { level: shown });
  if (fixing === 'cemented' && side === 'low')
    return say('crown.depth.cemented.low', { above: sizeOf(reading) });
  return say(`crown.depth.${fixing}.${side}` as 'crown.depth.screw-bone.low', { depth: shown });
}

/** The angle of a bent channel, kept on its side of the largest in use. */
const angleOf = ({ angle, most }: ExitMeaning): string =>
  formatQuantity({ value: angle ?? Number.NaN, unit: 'deg', limits: [most] });

function briefText({ fixing, mark, axis, depth }: FixingAnswer): string {
  const status = say(`status.${mark}`);
  const level = presentReading(depth.reading).quantity;
  if (axis.kind === 'cement') {
    const offset = sizeOf(axis.offset);
    return say('crown.brief.cemented', { status, offset, depth: level });
  }
  if (axis.kind === 'one-piece') return say('crown.brief.onePiece', { status });
  const { code } = axis.exit;
  const bends = code === 'bent' || code === 'beyond';
  const turn = angleOf(axis.exit);
  const way = code === 'straight' ? 'straight' : 'none';
  if (fixing === 'screw-gum') {
    return bends
      ? say('crown.brief.bentAtCej', { status, turn, level })
      : say(`crown.brief.${way}AtCej`, { status, level });
  }
  return bends
    ? say('crown.brief.bent', { status, turn, depth: level })
    : say(`crown.brief.${way}`, { status, depth: level });
}

/** What a pose means for one way of fixing the crown, in words. */
export interface PresentedAnswer {
  readonly name: string;
  readonly mark: FixingAnswer['mark'];
  /** In one clause: whether the pose suits it. */
  readonly lead: string;
  /** Both its parts in a few words. */
  readonly brief: string;
  readonly axis: string;
  readonly depth: string;
}

export function presentAnswer(answer: FixingAnswer): PresentedAnswer {
  const { fixing, mark } = answer;
  const name = say(`fixing.${fixing}`);
  return {
    name,
    mark,
    lead: say(`crown.lead.${mark}`),
    brief: briefText(answer),
    axis: axisText(answer),
    depth: depthText(answer),
  };
}

/** What has to be ground off a one-piece abutment; null: the implant has none. */
export function presentGrinding(evaluation: Evaluation): string | null {
  const brief = grindingSlots(evaluation);
  if (!brief) return null;
  const slots = { ...brief.slots, material: materialName(evaluation.plan.crown.material) };
  return say(`crown.grind.${brief.code}` as 'crown.grind.lacking', slots);
}

/** The same in few words, for beside the material. */
export function briefGrinding(evaluation: Evaluation): string | null {
  const brief = grindingSlots(evaluation);
  return brief && say(`crown.grindBrief.${brief.code}` as 'crown.grindBrief.lacking', brief.slots);
}

/** Which of the sentences it is, and its numbers; each template takes of them what it has slots for. */
function grindingSlots({ readings }: Evaluation) {
  const depth = readingOf(readings, 'abutment-reduction-depth');
  if (depth.value === null) return null;
  const slots = {
    depth: presentReading(depth).quantity,
    volume: presentReading(readingOf(readings, 'abutment-reduction-volume')).quantity,
    lacking: formatQuantity({ value: depth.aside ?? Number.NaN, unit: 'mm' }),
  };
  return { code: depth.value === 0 ? 'none' : depth.aside === null ? 'some' : 'lacking', slots };
}

/** The part-turns that would mend the depth which the fixing judges. */
export function presentTurns(turns: readonly DepthTurns[]): string {
  if (turns.length === 0) return say('crown.turns.round');
  return presentDepthTurns(turns.find(({ promise }) => promise !== null) ?? turns[0], 'turnsBrief');
}
