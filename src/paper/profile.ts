import type { ProfileSample, Side, WallProfile } from '../core/measure/reading.ts';
import { type Evaluation, readingOf } from '../core/plan/evaluate.ts';
import { dashed } from '../marks/dash.ts';
import type { Point } from '../marks/path.ts';
import { formatNumber } from '../words/format.ts';
import { presentReading } from '../words/presentReading.ts';
import { say } from '../words/saySheet.ts';
import { hatched } from './hatch.ts';
import { dimension, glyph, tag } from './marks.ts';
import { area, DASHES, type Drawing, ink, LINE, line, type Shape, text } from './shapes.ts';
import { limitSteps, runsOf } from './wallRuns.ts';

/** Thickest wall that is drawn, mm of the model; more is cut off. */
const MOST = 6;
const TYPE = { tag: 3.9, figure: 3.2, word: 3.2 } as const;
const wayOf = (side: Side): 1 | -1 => (side === 'facial' ? 1 : -1);
const figure = (value: number): string => formatNumber({ value: Math.abs(value), unit: 'count' });

const none = () => 0;
const wall = (s: ProfileSample) => Math.min(MOST, Math.max(0, s.wall ?? 0));
const outside = (s: ProfileSample) => Math.min(0, s.wall ?? 0);

type Place = (thickness: number, level: number) => Point;

/** One side's bone, the void on the way, and where the surface stands out of it. */
function side({ side: of, samples }: WallProfile, scale: number): Shape[] {
  const place: Place = (thickness, level) => ({ x: wayOf(of) * thickness * scale, y: level * scale });
  const runs = runsOf(samples);
  const between = (from: (s: ProfileSample) => number, to: (s: ProfileSample) => number) =>
    runs.map(({ samples: run }) => [
      ...run.map((s) => place(from(s), s.level)),
      ...run.map((s) => place(to(s), s.level)).reverse(),
    ]);
  const closed = (loops: readonly (readonly Point[])[]) => loops.map((loop) => line(loop, true)).join('');
  const edges = (counting: boolean) =>
    runs
      .flatMap(({ samples: run }) => stretches(run, counting))
      .map((run) => line(run.map((s) => place(Math.min(MOST, s.wall ?? 0), s.level))))
      .join('');
  const voids = samples.some(({ gap }) => gap > 0.005)
    ? between(wall, (s) => Math.min(MOST, wall(s) + s.gap))
    : [];
  const bare = samples.some((s) => outside(s) < 0) ? between(none, outside) : [];
  return [
    area(closed(between(none, wall)), 'profile'),
    ...(voids.length > 0 ? [ink(closed(voids) + hatched(voids, 1.2), LINE.fine)] : []),
    ink(edges(false), LINE.fine),
    ink(edges(true), LINE.outline, `${of}-wall`),
    ...(bare.length > 0 ? [ink(closed(bare) + hatched(bare, 0.7), LINE.thin)] : []),
  ].filter(({ d }) => d !== '');
}

/** A run as it is, or its stretches of levels that count. */
function stretches(run: readonly ProfileSample[], counting: boolean): ProfileSample[][] {
  const out: ProfileSample[][] = [[]];
  for (const s of run) {
    if (counting && !s.counts) out.push([]);
    else out[out.length - 1].push(s);
  }
  return out.filter((one) => one.length > 1);
}

/** A side's limits: within from the dashed line outward, beyond inside the solid one. */
function limits({ plan, placement }: Evaluation, of: Side, scale: number): Shape[] {
  const points = (bound: 'near' | 'beyond') =>
    limitSteps(plan, of, bound, Math.max(0, placement.tP), placement.tA).map(({ level, thickness }) => ({
      x: wayOf(of) * thickness * scale,
      y: level * scale,
    }));
  return [ink(dashed(points('near'), DASHES.within), LINE.bold), ink(line(points('beyond')), 0.6)].filter(
    ({ d }) => d !== '',
  );
}

/** The thinnest place of a side with its tag. */
function thinnest({ readings }: Evaluation, of: Side, scale: number): Shape[] {
  const reading = readingOf(readings, `${of}-wall-thinnest`);
  if (reading.value === null || reading.level === null) return [];
  const shown = presentReading(reading);
  const way = wayOf(of);
  const y = reading.level * scale;
  const edge = { x: way * Math.min(MOST, reading.value) * scale, y };
  const end = { x: way * (MOST * scale + 3), y };
  return [
    ...dimension({ x: 0, y }, edge, [end]),
    ...tag(
      { number: shown.number, mark: shown.mark, reading: reading.id },
      end,
      of === 'facial' ? 'right' : 'left',
      TYPE.tag,
    ),
  ];
}

/** Levels down the middle, thicknesses along the foot. */
function scales(scale: number, foot: number): Shape[] {
  const levels = Array.from({ length: Math.floor(foot / 2) }, (_, i) => 2 * (i + 1));
  const thicknesses = [-6, -4, -2, 0, 2, 4, 6];
  const upright = (x: number) =>
    line([
      { x, y: 0 },
      { x, y: foot * scale },
    ]);
  const across = (y: number) =>
    line([
      { x: -MOST * scale, y },
      { x: MOST * scale, y },
    ]);
  return [
    { kind: 'path', d: thicknesses.map((t) => upright(t * scale)).join(''), stroke: 'soft', width: 0.08 },
    { kind: 'path', d: levels.map((t) => across(t * scale)).join(''), stroke: 'soft', width: 0.08 },
    ...levels.map((t) =>
      text(0, t * scale + 0.35 * TYPE.figure, figure(t), TYPE.figure, { anchor: 'middle', cased: true }),
    ),
    ...thicknesses.map((t) =>
      text(t * scale, foot * scale + 4, figure(t), TYPE.figure, { anchor: 'middle', strong: true }),
    ),
    text(-MOST * scale, foot * scale + 8.4, say('drawing.palatalMm'), TYPE.word),
    text(MOST * scale, foot * scale + 8.4, say('drawing.facialMm'), TYPE.word, { anchor: 'end' }),
  ];
}

/** What lines and glyphs mean, over the plot. */
function legend(scale: number): Shape[] {
  const [x, y] = [-MOST * scale, -16];
  const stroke = [
    { x, y },
    { x: x + 8, y },
  ];
  const lower = stroke.map((p) => ({ x: p.x, y: p.y + 5 }));
  return [
    ink(dashed(stroke, DASHES.within), LINE.bold),
    text(x + 10, y + 1.1, say('drawing.withinLine'), TYPE.word),
    ink(line(lower), 0.6),
    text(x + 10, y + 6.1, say('drawing.beyondLine'), TYPE.word),
    ...(['within', 'near', 'beyond'] as const).flatMap((mark, i) => [
      ...glyph(mark, { x: x + 2 + i * 19, y: y + 10 }, 3.4),
      text(x + 5 + i * 19, y + 11.1, say(`status.${mark}`), TYPE.word),
    ]),
  ];
}

/** Both walls against depth at one scale for depth and thickness: palatal left, facial right, the limits as lines. The origin is the implant's surface at the crest's level. */
export function wallProfile(evaluation: Evaluation, scale: number): Drawing {
  const foot = Math.ceil(evaluation.placement.tA + 0.5);
  const half = MOST * scale + 22;
  return {
    left: -half,
    top: -21,
    width: 2 * half,
    height: foot * scale + 33,
    label: say('sheet.profileLabel'),
    shapes: [
      ...legend(scale),
      ...scales(scale, foot).slice(0, 2),
      ...evaluation.profiles.flatMap((profile) => side(profile, scale)),
      ...limits(evaluation, 'palatal', scale),
      ...limits(evaluation, 'facial', scale),
      ink(
        line([
          { x: -MOST * scale, y: 0 },
          { x: MOST * scale, y: 0 },
        ]),
        LINE.thin,
      ),
      text(MOST * scale + 1.5, 1.1, say('drawing.crest'), TYPE.word),
      ...scales(scale, foot).slice(2),
      ...thinnest(evaluation, 'palatal', scale),
      ...thinnest(evaluation, 'facial', scale),
    ],
  };
}
