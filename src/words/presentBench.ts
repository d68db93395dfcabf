import type { DrillPose } from '../core/drilling/rehearsal.ts';
import { ENOUGH_ATTEMPTS, type EndSpread, type HandSpread, type Way } from '../core/spread/hand.ts';
import type { BenchCheck, Held } from '../core/teaching/bench.ts';
import type { CalliperPlace } from '../core/teaching/benchPlaces.ts';
import type { GuessKind, GuessSummary } from '../core/teaching/guesses.ts';
import { MEASURE_IDS, measuresOf, unitOfMeasure } from '../core/teaching/measures.ts';
import { formatNumber, formatQuantity, type Unit } from './format.ts';
import { measureText, sayMeasure } from './presentMark.ts';
import { say } from './sayTeach.ts';

const mm = (value: number): string => formatQuantity({ value, unit: 'mm' });
const PARTS = [
  'faciopalatal',
  'mesiodistal',
  'depth',
  'global',
] as const satisfies readonly (keyof EndSpread)[];
const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** Where a calliper is held. */
export const sayCalliper = (place: CalliperPlace): string =>
  place.kind === 'pin'
    ? say(`bench.pin.${place.point}`)
    : say('bench.at', { what: say(`bench.${place.kind}`), depth: mm(place.depth) });

/** The deviation of a hole at the bench, each measure with its SD, and what is to be said of it. */
export function presentBench(check: BenchCheck, places: readonly CalliperPlace[]) {
  const measures = measuresOf(check.deviation);
  const rows = MEASURE_IDS.filter((id) => measures[id] !== null).map((id) => ({
    id,
    text: say('bench.row', {
      measure: sayMeasure(id),
      value: measureText(id, measures[id]),
      sd: formatQuantity({ value: check.spread[id], unit: unitOfMeasure(id) }),
    }),
  }));
  const notes = check.held.map((held) => say(`bench.held.${held}`));
  if (!check.doubtful) return { rows, notes };
  const sizes = check.residuals.map(Math.abs);
  const worst = sizes.indexOf(Math.max(...sizes));
  const slots = { what: sayCalliper(places[worst]), by: mm(sizes[worst]) };
  return { rows, notes: [say('bench.doubtful', slots), ...notes] };
}

/** The spread of a hand in rows: mean and SD of every part at both ends, and of the angle. */
export function presentHand(spread: HandSpread | null, way: Way) {
  const heading = say(`hand.way.${way}`);
  if (!spread) return { heading, count: say('ownHand.none'), rows: [] };
  const counted = spread.n < ENOUGH_ATTEMPTS ? 'hand.few' : 'hand.count';
  const row = (id: (typeof MEASURE_IDS)[number], mean: number, sd: number | null) => ({
    id,
    label: sayMeasure(id),
    mean: measureText(id, mean),
    sd: formatQuantity({ value: sd ?? Number.NaN, unit: unitOfMeasure(id) }),
  });
  const ends = (['platform', 'apex'] as const).flatMap((end) =>
    PARTS.map((part) => row(`${end}-${part}`, spread[end][part].mean, spread[end][part].sd)),
  );
  return {
    heading,
    count: say(counted, { count: count(spread.n) }),
    rows: [...ends, row('angle', spread.angle.mean, spread.angle.sd)],
  };
}

const sayKind = (kind: GuessKind): string => (kind === 'lean' ? say('guesses.lean') : say(`reading.${kind}`));

/** A line for every kind of guess; `unitOf`: of a reading as it was guessed. */
export function presentGuesses(
  summaries: readonly GuessSummary[],
  unitOf: (kind: GuessKind) => Unit,
): { readonly kind: GuessKind; readonly text: string; readonly better: string }[] {
  return summaries.map(({ kind, error, size, first, last }) => {
    const text = (value: number, signed = false) => formatQuantity({ value, unit: unitOf(kind), signed });
    const what = sayKind(kind);
    return {
      kind,
      text:
        error.sd === null
          ? say('guesses.rowOne', { what, size: text(size) })
          : say('guesses.row', {
              what,
              size: text(size),
              mean: text(error.mean, true),
              sd: text(error.sd),
              count: count(error.n),
            }),
      better: error.n >= 20 ? say('guesses.better', { first: text(first), last: text(last) }) : '',
    };
  });
}

/** The axis that was found, beside the planned one; what was not measured is said to be as planned. */
export function presentBenchPose({ line, sd, held }: BenchCheck, planned: DrillPose) {
  const row = (
    what: 'entry.m' | 'entry.f' | 'lean.mesiodistal' | 'lean.faciopalatal',
    numbers: PoseNumbers,
  ) => {
    const unit = what.startsWith('entry') ? 'mm' : 'deg';
    const text = (value: number) => formatQuantity({ value, unit, signed: true });
    const slots = { what: say(`ownHand.${what}`), value: text(numbers.value) };
    if (numbers.held) return { id: what, text: say('ownHand.poseHeld', slots) };
    const rest = { sd: formatQuantity({ value: numbers.sd, unit }), planned: text(numbers.planned) };
    return { id: what, text: say('ownHand.poseRow', { ...slots, ...rest }) };
  };
  const isHeld = (what: Held) => held.includes(what);
  return [
    row('entry.m', {
      value: line.mouth.m,
      sd: sd.m,
      planned: planned.mouth.m,
      held: isHeld('mesiodistal-place'),
    }),
    row('entry.f', { value: line.mouth.f, sd: sd.f, planned: planned.mouth.f, held: false }),
    row('lean.mesiodistal', {
      value: line.tilt.mesiodistal,
      sd: sd.mesiodistal,
      planned: planned.tilt.mesiodistal,
      held: isHeld('mesiodistal-angle'),
    }),
    row('lean.faciopalatal', {
      value: line.tilt.faciopalatal,
      sd: sd.faciopalatal,
      planned: planned.tilt.faciopalatal,
      held: false,
    }),
  ];
}

interface PoseNumbers {
  readonly value: number;
  readonly sd: number;
  readonly planned: number;
  readonly held: boolean;
}
