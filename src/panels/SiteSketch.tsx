import { useMemo } from 'react';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { measureOf, type SiteMeasure } from '../core/anatomy/siteMeasures.ts';
import { inPlane, type SiteSketch as Outlines, siteSketch } from '../core/anatomy/siteSketch.ts';
import type { Loop } from '../core/geometry/slice.ts';
import { along } from '../core/geometry/vec.ts';
import { Dimension } from '../marks/Dimension.tsx';
import { type Point, polyline } from '../marks/path.ts';
import { Tag } from '../marks/Tag.tsx';
import { say } from '../words/saySite.ts';

const WIDTH = 348;
const HEIGHT = 196;
/** Least of the model that is shown from side to side and from top to bottom, and what is left free about a measure; mm. */
const LEAST = 15;
const FREE = 5;
/** Arms of an angle and its arc, mm. */
const ARM = 8;
const ARC = 6;

/** From a view's coordinates to the drawing: the measure in the middle, as large as fits. */
interface Frame {
  readonly scale: number;
  readonly point: (at: readonly [number, number]) => Point;
}

/** A left site is drawn as it is seen: its mesial side at the left. */
const mirrorOf = (anatomy: Anatomy, measure: SiteMeasure): 1 | -1 =>
  (measure.view === 'front' || measure.view === 'arch') && anatomy.site.tooth > 20 ? -1 : 1;

function endsOf(measure: SiteMeasure, { plane }: Outlines): readonly (readonly [number, number])[] {
  if (measure.kind === 'length') return [inPlane(plane, measure.from), inPlane(plane, measure.to)];
  const arms = [measure.from, measure.to].map((way) => inPlane(plane, along(measure.at, way, ARM)));
  return [inPlane(plane, measure.at), ...arms];
}

function frameOf(ends: readonly (readonly [number, number])[], mirror: 1 | -1): Frame {
  const xs = ends.map(([x]) => x * mirror);
  const ys = ends.map(([, y]) => y);
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const [low, high] = [Math.min(...ys), Math.max(...ys)];
  const across = Math.max(LEAST * (WIDTH / HEIGHT), right - left + 2 * FREE);
  const up = Math.max(LEAST, high - low + 2 * FREE);
  const scale = Math.min(WIDTH / across, HEIGHT / up);
  const [x0, y0] = [(left + right) / 2, (low + high) / 2];
  return {
    scale,
    point: ([x, y]) => ({ x: WIDTH / 2 + (x * mirror - x0) * scale, y: HEIGHT / 2 - (y - y0) * scale }),
  };
}

/** Two arms and the arc between them, with an arrow at its end. */
function Angle({ ends, frame }: { ends: readonly (readonly [number, number])[]; frame: Frame }) {
  const [at, from, to] = ends.map(frame.point);
  const on = (end: Point, share: number): Point => ({
    x: at.x + (end.x - at.x) * share,
    y: at.y + (end.y - at.y) * share,
  });
  const [start, stop] = [on(from, ARC / ARM), on(to, ARC / ARM)];
  const r = ARC * frame.scale;
  const way = (from.x - at.x) * (to.y - at.y) - (from.y - at.y) * (to.x - at.x) > 0 ? 1 : 0;
  return (
    <g className="sketch-angle">
      <path className="sketch-upright" d={polyline([at, from])} />
      <path d={polyline([at, to])} />
      <path d={`M${start.x} ${start.y}A${r} ${r} 0 0 ${way} ${stop.x} ${stop.y}`} />
      <circle cx={at.x} cy={at.y} r="3" />
    </g>
  );
}

interface SiteSketchProps {
  anatomy: Anatomy;
  path: string;
  /** The number with its unit, and what it is of. */
  quantity: string;
  name: string;
}

/** What a number of the site measures, drawn on the site as it is now. */
export function SiteSketch({ anatomy, path, quantity, name }: SiteSketchProps) {
  const drawn = useMemo(() => {
    const measure = measureOf(anatomy, path);
    if (!measure) return null;
    const outlines = siteSketch(anatomy, measure.view);
    const ends = endsOf(measure, outlines);
    return { measure, outlines, ends, frame: frameOf(ends, mirrorOf(anatomy, measure)) };
  }, [anatomy, path]);
  if (!drawn) return <p className="calm">{say('site.sketchNone')}</p>;
  const { measure, outlines, ends, frame } = drawn;
  const shape = (loops: readonly Loop[]): string =>
    loops.map((loop) => polyline(loop.map(frame.point), true)).join('');
  const points = ends.map(frame.point);
  const last = points[points.length - 1];
  const right = last.x < WIDTH * 0.62;
  const leader = { x: last.x + (right ? 26 : -26), y: Math.max(20, last.y - 16) };
  return (
    <figure className="sketch">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={say('site.sketch', { field: name, value: quantity })}
        data-sketch={path}
      >
        <path className="gum-cut" d={shape(outlines.gum)} />
        <path className="sketch-root" d={shape(outlines.roots)} />
        <path className="bone-cut" d={shape(outlines.bone)} />
        <path className="sketch-marrow" d={shape(outlines.marrow)} />
        <path className="sketch-root" d={shape(outlines.roots)} />
        <path className="sketch-crown" d={shape(outlines.crowns)} />
        <path className="sketch-planned" d={shape(outlines.planned)} />
        {measure.kind === 'length' ? (
          <Dimension from={points[0]} to={points[1]} leader={[leader]} lit />
        ) : (
          <>
            <Angle ends={ends} frame={frame} />
            <path className="sketch-leader" d={polyline([last, leader])} />
          </>
        )}
        <Tag {...leader} side={right ? 'right' : 'left'} number={quantity} lit />
      </svg>
      <figcaption className="caption">{say(`sketch.${measure.view}`)}</figcaption>
    </figure>
  );
}
