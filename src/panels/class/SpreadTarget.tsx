import type { ClassReport } from '../../core/teaching/classReport.ts';
import type { Mark } from '../../core/teaching/mark.ts';
import { formatNumber } from '../../words/format.ts';
import { say } from '../../words/sayTeach.ts';
import { beginnersOf, reachOf, stepsUpTo, valuesOf } from './spreadScale.ts';

interface SpreadTargetProps {
  /** Which end of the implant. */
  end: 'platform' | 'apex';
  marks: readonly Pick<Mark, 'label' | 'measures' | 'done'>[];
  report: Pick<ClassReport, 'measures'>;
  /** Draws the beginners' published mean beside them. */
  beside?: boolean;
}

/** Half the drawing's width to the outermost ring, units of the drawing. */
const HALF = 116;
const EDGE = 24;

/**
 * Where attempts put one end of the implant, as seen from its crown along the planned axis: facial up, mesial to the right, the plan in the middle; rings in mm. The beginners'
 * published mean is that of the global distance, drawn as a hatched ring. A full dot is done, an open one not.
 */
export function SpreadTarget({ end, marks, report, beside = true }: SpreadTargetProps) {
  const [across, up] = [`${end}-mesiodistal`, `${end}-faciopalatal`] as const;
  const beginners = beside ? beginnersOf(`${end}-global`) : null;
  const reach = reachOf([...valuesOf(marks, across), ...valuesOf(marks, up), ...(beginners ?? [])], 1);
  const px = (mm: number) => (mm / reach) * HALF;
  const [mx, my] = [report.measures[across], report.measures[up]];
  const total = formatNumber({ value: marks.length, unit: 'count' });
  const bounds = HALF + EDGE;
  return (
    <figure className="spread-target">
      <figcaption>{say(`classPage.${end}`)}</figcaption>
      <svg
        viewBox={`${-bounds} ${-bounds} ${2 * bounds} ${2 * bounds}`}
        role="img"
        aria-label={say('classPage.drawing', { count: total })}
      >
        {beginners && (
          <circle
            className="spread-published"
            r={px((beginners[0] + beginners[1]) / 2)}
            strokeWidth={Math.max(3, px(beginners[1] - beginners[0]))}
          />
        )}
        {stepsUpTo(reach, 1).map((mm) => (
          <g key={mm} className="spread-ring">
            <circle r={px(mm)} />
            <text x={px(mm) * Math.SQRT1_2 + 2} y={px(mm) * Math.SQRT1_2 + 9}>
              {formatNumber({ value: mm, unit: 'mm', exact: true })}
            </text>
          </g>
        ))}
        <path className="spread-axes" d={`M${-HALF} 0H${HALF}M0 ${-HALF}V${HALF}`} />
        <g className="spread-ends">
          <text y={-HALF - 8}>{say('classPage.facial')}</text>
          <text y={HALF + 17}>{say('classPage.palatal')}</text>
          <text transform={`translate(${HALF + 9} 0) rotate(90)`}>{say('classPage.mesial')}</text>
          <text transform={`translate(${-HALF - 9} 0) rotate(-90)`}>{say('classPage.distal')}</text>
        </g>
        {marks.map(({ label, measures, done }, i) => (
          <circle
            // biome-ignore lint/suspicious/noArrayIndexKey: labels may repeat, and the list is only drawn
            key={`${label} ${i}`}
            className="spread-dot"
            data-done={done}
            cx={px(measures[across] ?? 0)}
            cy={-px(measures[up] ?? 0)}
            r="3.1"
          />
        ))}
        {mx && my && (
          <path
            className="spread-mean"
            d={`M${px(mx.mean - (mx.sd ?? 0))} ${-px(my.mean)}H${px(mx.mean + (mx.sd ?? 0))}M${px(mx.mean)} ${-px(my.mean - (my.sd ?? 0))}V${-px(my.mean + (my.sd ?? 0))}`}
          />
        )}
      </svg>
    </figure>
  );
}
