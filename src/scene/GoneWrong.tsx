import { pair, px } from '../marks/path.ts';
import { say } from '../words/say.ts';
import type { EndLabel, GoneWrongDrawing } from './goneWrong.ts';

function Label({ label: { from, to, side }, text, size }: { label: EndLabel; text: string; size: number }) {
  const right = side === 'right';
  return (
    <>
      <path className="ink-line" d={`M${pair(from)}L${pair(to)}`} />
      <text
        className="ink-text"
        style={{ fontSize: size }}
        x={px(to.x + (right ? 4 : -4))}
        y={px(to.y + size / 3)}
        textAnchor={right ? 'start' : 'end'}
      >
        {text}
      </text>
    </>
  );
}

/** The plan in thin lines over what has gone wrong, and both named. */
export function GoneWrong({ drawing, size }: { drawing: GoneWrongDrawing; size: number }) {
  return (
    <g className="gone-wrong">
      <path className="ink-casing" d={drawing.casing} />
      <path className="ink-line" d={drawing.good} />
      <Label label={drawing.labels.wrong} text={say('teach.wrong')} size={size} />
      <Label label={drawing.labels.good} text={say('teach.good')} size={size} />
    </g>
  );
}
