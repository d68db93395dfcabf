import type { ReadingId } from '../core/measure/reading.ts';
import type { CrownDrawing } from './crownDrawing.ts';

interface CrownInkProps {
  drawing: CrownDrawing;
  lit: ReadingId | null;
}

/** A line of ink on a casing of the paper. */
function Cased({ d, className = '' }: { d: string; className?: string }) {
  return (
    <g className={className}>
      <path className="ink-casing" d={d} />
      <path className="ink-line" d={d} />
    </g>
  );
}

/** The crown in ink: its outline and edge, the channel with its bend and its exit, the contour's angles, the finishing line, the contact points. */
export function CrownInk({ drawing: d, lit }: CrownInkProps) {
  return (
    <g className="crown-ink">
      <path className="ink-line crown-gone" d={d.gone} />
      <path className="ink-line" d={d.stands} />
      <path className="ink-line crown-edge" d={d.edge} />
      {d.finish && (
        <>
          <path className="ink-line" d={d.finish.back} />
          <Cased className="crown-finish" d={d.finish.front} />
        </>
      )}
      <Cased className="crown-lowered" d={d.lowered} />
      <Cased className="crown-whole" d={d.whole} />
      {d.channel && (
        <g className="crown-channel" data-mark="channel">
          <path className="crown-bore" d={d.channel} />
          <path className="ink-line" d={d.channel} />
        </g>
      )}
      <Cased d={d.straight} />
      {d.angles.map(({ id, legs, arc }) => (
        <g key={id} className={id === lit ? 'crown-angle lit' : 'crown-angle'} data-mark={id}>
          <path className="ink-casing" d={legs + arc} />
          <path className="angle-line" d={legs + arc} />
        </g>
      ))}
      {d.exit && (
        <g className="crown-exit" data-mark="exit" data-hidden={d.exit.hidden}>
          <path className="ink-casing" d={d.exit.ring} />
          <path className="ink-line ring" d={d.exit.ring} />
          <path className="ink-line" d={d.exit.cross} />
        </g>
      )}
      <path className="ink-line crown-contact" d={d.contacts} />
    </g>
  );
}
