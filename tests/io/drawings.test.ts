import { describe, expect, it } from 'vitest';
import { totalLength } from '../../src/core/implant/shape.ts';
import { type Evaluation, evaluate, readingOf } from '../../src/core/plan/evaluate.ts';
import { shortFingerprint } from '../../src/core/plan/fingerprint.ts';
import { DRAWN_AT, drawingSvg, PLAN_DRAWINGS, type PlanDrawing } from '../../src/io/drawings.ts';
import { DEMO_PLANS } from '../../src/io/plans.ts';
import { packed } from '../../src/panels/sheet/usePages.ts';
import { hatched } from '../../src/paper/hatch.ts';
import { moved } from '../../src/paper/shapes.ts';
import { presentReading } from '../../src/words/presentReading.ts';

const evaluations = DEMO_PLANS.map(({ id, plan }) => ({ id, evaluation: evaluate(plan) }));

/** Every point of a path's data that is given by `M` or `L`. */
const pointsOf = (d: string): [number, number][] =>
  [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => [Number(x), Number(y)]);
const span = (values: readonly number[]): number => Math.max(...values) - Math.min(...values);

/** The paths of a name in an SVG text. */
const partsOf = (svg: string, name: string): [number, number][][] =>
  [...svg.matchAll(new RegExp(`data-part="${name}" d="([^"]+)"`, 'g'))].map(([, d]) => pointsOf(d));

describe('drawings as files', () => {
  it.each(evaluations)('of $id stand alone, in millimetres of true scale', ({ evaluation }) => {
    for (const kind of PLAN_DRAWINGS) {
      const svg = drawingSvg(evaluation, kind);
      const [, width, height, box] =
        svg.match(/ width="([\d.]+)mm" height="([\d.]+)mm" viewBox="0 0 ([\d. ]+)"/) ?? [];
      expect(box).toBe(`${width} ${height}`);
      expect(svg).not.toMatch(/url\(|href|class=|NaN|undefined|Infinity/);
      expect(svg).toContain('sans-serif');
      expect(svg).toContain(shortFingerprint(evaluation.plan));
      for (const [x, y] of pointsOf(svg)) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(Number(width));
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(Number(height));
      }
    }
  });

  it.each(evaluations)('of $id draw the implant as long as it is, the bar 50 mm', ({ evaluation }) => {
    const { implant } = evaluation.plan;
    const lengthIn = (kind: PlanDrawing) => {
      const [outline] = partsOf(drawingSvg(evaluation, kind), 'implant');
      return span(outline.map(([, y]) => y)) / DRAWN_AT[kind];
    };
    // A scalloped shoulder stands so much higher on two sides.
    const longest = totalLength(implant) + implant.scallop;
    for (const kind of ['section', 'walls'] as const) {
      expect(lengthIn(kind)).toBeGreaterThan(totalLength(implant) - 0.01);
      expect(lengthIn(kind)).toBeLessThan(longest + 0.01);
    }
    const [bar] = partsOf(drawingSvg(evaluation, 'section'), 'check-bar');
    expect(span(bar.map(([x]) => x))).toBeCloseTo(50, 3);
  });

  const digitsIn = (svg: string) =>
    [...svg.matchAll(/data-reading="([^"]+)"[^>]*>([^<]*)</g)].map(([, id, number]) => ({ id, number }));

  it.each(evaluations)('of $id carry the digits of the page', ({ evaluation }) => {
    const shown = (of: Evaluation, id: string) => presentReading(readingOf(of.readings, id as 'root-mesial'));
    for (const kind of ['walls', 'profile'] as const) {
      const digits = digitsIn(drawingSvg(evaluation, kind));
      expect(digits.length).toBeGreaterThan(0);
      for (const { id, number } of digits) expect(number).toBe(shown(evaluation, id).number);
    }
  });
});

describe('strokes of a hatch', () => {
  it('fill a square with a hole: worked by hand', () => {
    const square = [
      { x: 0, y: 0 },
      { x: 4, y: 0 },
      { x: 4, y: 4 },
      { x: 0, y: 4 },
    ];
    const hole = square.map(({ x, y }) => ({ x: 1 + x / 2, y: 1 + y / 2 }));
    // Strokes on x + y = k √2: through the hole each is broken in two; their lengths add up to (16 − 4) mm² over 1 mm.
    const lengths = (d: string) =>
      [...d.matchAll(/M(-?[\d.]+) (-?[\d.]+)L(-?[\d.]+) (-?[\d.]+)/g)].map(([, a, b, c, e]) =>
        Math.hypot(Number(c) - Number(a), Number(e) - Number(b)),
      );
    const fine = 0.01;
    const sum = lengths(hatched([square, hole], fine)).reduce((a, b) => a + b, 0);
    expect(sum * fine).toBeCloseTo(12, 1);
  });
});

describe('a drawing that is moved', () => {
  it('is moved whole: absolute places move, relative ones go with them', () => {
    const by = { x: 10, y: -2 };
    expect(moved({ kind: 'path', d: 'M1 2L3 4.5Zm1 1a2 2 0 1 0 4 0' }, by)).toMatchObject({
      d: 'M11 0L13 2.5Zm1 1a2 2 0 1 0 4 0',
    });
    expect(moved({ kind: 'text', x: 0, y: 0, text: 'L1 1', size: 3 }, by)).toMatchObject({
      x: 10,
      y: -2,
      text: 'L1 1',
    });
  });
});

describe('blocks on pages', () => {
  it('go on a new page where the next one does not fit, in order', () => {
    expect(packed([50, 40, 20, 90, 10], 100, 120)).toEqual([0, 0, 1, 1, 1]);
    expect(packed([50, 60, 60, 10], 100, 120)).toEqual([0, 1, 1, 2]);
  });

  it('never leave an empty page before one that is too high', () => {
    expect(packed([500, 10], 100, 100)).toEqual([0, 1]);
  });
});
