import type { PointerEvent } from 'react';
import type { ReadingId } from '../core/measure/reading.ts';
import { Dimension } from '../marks/Dimension.tsx';
import { AXIS, dashed } from '../marks/dash.ts';
import { type Point, pair, polyline, px } from '../marks/path.ts';
import { Tag } from '../marks/Tag.tsx';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/say.ts';
import { CrownInk } from './CrownInk.tsx';
import type { CrownDrawing } from './crownDrawing.ts';
import type { HandleDrawing, IncisalDrawing } from './drawing.ts';
import { GoneWrong } from './GoneWrong.tsx';
import type { GhostDrawing } from './ghost.ts';
import type { GoneWrongDrawing } from './goneWrong.ts';
import { type Can, Handles } from './Handles.tsx';
import type { HandleId } from './handles.ts';
import type { TagLine } from './tagLayout.ts';

/** Everything in ink over the canvas, for one frame. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  readonly axis: readonly [Point, Point];
  readonly incisal: IncisalDrawing;
  /** Outlines of roots in the bone, and of the part that is taken away; path data. */
  readonly hidden: string;
  readonly ghost: string;
  /** The pose a drag began with, and the kept one. */
  readonly poses: readonly GhostDrawing[];
  /** The plan, where what is shown has gone wrong. */
  readonly gone: GoneWrongDrawing | null;
  readonly tags: readonly TagLine[];
  /** The crown group, where it is the place's own matter. */
  readonly crown: CrownDrawing | null;
  /** Type size of the tags, px. */
  readonly tagSize: number;
  readonly handles: HandleDrawing;
  /** Size of a millimetre at the target, px. */
  readonly scale: number;
  readonly lines: boolean;
  readonly lit: ReadingId | null;
  readonly hover: string | null;
  readonly dragging: string | null;
  readonly mesialArc: boolean;
  /** What can be done with what is held. */
  readonly can: Can;
  readonly tiltShown: boolean;
  readonly tilt: { readonly number: string; readonly words: string };
  readonly caption: string;
}

interface OverlayProps {
  sheet: Sheet;
  onGrip: (id: HandleId, event: PointerEvent<SVGElement>) => void;
  onHover: (id: HandleId | null) => void;
  onPick: (id: ReadingId) => void;
  onPoint: (id: ReadingId | null) => void;
}

interface IncisalProps {
  drawing: IncisalDrawing;
  tags: readonly TagLine[];
}

/** Width and height of the label, px, and how far it stands from the line's end. */
const LABEL = { width: 72, height: 18, away: 26 } as const;

/** The incisal line; its label stands where no tag is, or is left out. */
function Incisal({ drawing: { mesial, distal, crossing }, tags }: IncisalProps) {
  const end = mesial.x < distal.x ? mesial : distal;
  const way = end.x < LABEL.width + LABEL.away + 8 ? 1 : -1;
  const bend = { x: end.x + way * LABEL.away, y: end.y - LABEL.away };
  const covered = tags.some(
    ({ tag, side }) =>
      Math.abs(tag.y - bend.y) < 30 &&
      (side === 'left' ? tag.x - 80 < bend.x && tag.x > bend.x - LABEL.width : false),
  );
  const line = polyline([mesial, distal]);
  const dot = (p: Point, r: number) =>
    `M${px(p.x - r)} ${px(p.y)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0z`;
  return (
    <g className="incisal">
      <path className="ink-casing" d={line} />
      <path className="ink-line" d={line} />
      <path className="ink-line end" d={dot(mesial, 3.6) + dot(distal, 3.6)} />
      <path className="ink-line crossing" d={dot(crossing, 2.2)} />
      {!covered && (
        <>
          <path className="ink-line" d={`M${pair(end)}L${pair(bend)}`} />
          <text
            className="ink-text"
            x={px(bend.x + way * 4)}
            y={px(bend.y - 3)}
            textAnchor={way > 0 ? 'start' : 'end'}
          >
            {say('stage.incisalLine')}
          </text>
        </>
      )}
    </g>
  );
}

/** A length of round millimetres, as near 150 px as there is, with a tick in its middle. */
function ScaleBar({ sheet: { scale, width, height, caption } }: { sheet: Sheet }) {
  const length = [1, 2, 5, 10, 20, 50].reduce((a, b) =>
    Math.abs(b * scale - 150) < Math.abs(a * scale - 150) ? b : a,
  );
  const size = length * scale;
  const [x, y] = [width - 18 - size, height - 22];
  return (
    <g className="scale-bar">
      <path
        className="ink-line"
        d={`M${px(x)} ${y - 5}v10M${px(x)} ${y}h${px(size)}M${px(x + size)} ${y - 5}v10M${px(x + size / 2)} ${y - 5}v10`}
      />
      <text className="ink-text" x={px(x - 8)} y={y + 4.5} textAnchor="end">
        {say('stage.scaleBar', { length: formatNumber({ value: length, unit: 'count' }) })}
      </text>
      <text className="ink-text" x={width - 18} y={y - 16} textAnchor="end">
        {caption}
      </text>
    </g>
  );
}

/** From what is drawn already to its tag. */
function Leader({ points, lit }: { points: readonly Point[]; lit: boolean }) {
  const line = polyline(points);
  return (
    <g className={lit ? 'dimension dimension-lit' : 'dimension'}>
      <path className="casing" d={line} />
      <path d={line} />
    </g>
  );
}

/** Ink over the canvas: outlines, axis, incisal line, measurements and handles. Its numbers are also in the table, so a screen reader passes it by. */
export function Overlay({ sheet, onGrip, onHover, onPick, onPoint }: OverlayProps) {
  const axis = polyline(sheet.axis);
  return (
    <svg className="ink" viewBox={`0 0 ${sheet.width} ${sheet.height}`} aria-hidden="true">
      {sheet.lines && <path className="ink-line ghost-line" d={sheet.ghost} />}
      <path className="ink-line hidden-line" d={sheet.hidden} />
      {sheet.poses.map(({ area, edge }) => (
        <g key={area} className="ghost-pose">
          <path className="ghost-area" d={area} />
          <path className="ink-line" d={edge} />
        </g>
      ))}
      <g className={sheet.gone ? 'axis-line wrong-axis' : 'axis-line'}>
        <path className="ink-casing" d={axis} />
        <path className="ink-line" d={dashed(sheet.axis, AXIS)} />
      </g>
      {sheet.crown && <CrownInk drawing={sheet.crown} lit={sheet.lit} />}
      {sheet.gone && <GoneWrong drawing={sheet.gone} size={sheet.tagSize} />}
      {sheet.lines && (
        <>
          <Incisal drawing={sheet.incisal} tags={sheet.tags} />
          {sheet.tags.map((line) => (
            // biome-ignore lint/a11y/noStaticElementInteractions: the table has the same readings as buttons
            <g
              key={line.id}
              className="tag-line"
              data-line={line.id}
              onPointerEnter={() => onPoint(line.id)}
              onPointerLeave={() => onPoint(null)}
              onClick={() => onPick(line.id)}
            >
              {line.measured ? (
                <Dimension from={line.from} to={line.to} leader={line.leader} lit={line.id === sheet.lit} />
              ) : (
                <Leader points={[line.to, ...line.leader]} lit={line.id === sheet.lit} />
              )}
              <Tag
                {...line.tag}
                side={line.side}
                number={line.number}
                mark={line.mark}
                words={line.words}
                size={sheet.tagSize}
                lit={line.id === sheet.lit}
              />
            </g>
          ))}
        </>
      )}
      {sheet.can !== 'none' && (
        <Handles
          drawing={sheet.handles}
          can={sheet.can}
          tagSize={sheet.tagSize}
          hover={sheet.hover}
          dragging={sheet.dragging}
          mesial={sheet.mesialArc}
          tilt={sheet.tiltShown ? sheet.tilt : null}
          onGrip={onGrip}
          onHover={onHover}
        />
      )}
      <ScaleBar sheet={sheet} />
    </svg>
  );
}
