import type { ClassReport } from '../../core/teaching/classReport.ts';
import type { Mark } from '../../core/teaching/mark.ts';
import { isSigned, type MeasureId, unitOfMeasure } from '../../core/teaching/measures.ts';
import { formatNumber } from '../../words/format.ts';
import { measureNumber, presentStatistics, sayMeasure } from '../../words/presentMark.ts';
import { say } from '../../words/sayTeach.ts';
import { beginnersOf, reachOf, stepsUpTo, valuesOf } from './spreadScale.ts';

interface SpreadStripProps {
  id: MeasureId;
  marks: readonly Mark[];
  report: ClassReport;
}

const WIDTH = 300;
const PAD = 14;

/** Every attempt as a tick on a line, with the class's mean and SD over it and the beginners' published mean as a hatched stretch. */
export function SpreadStrip({ id, marks, report }: SpreadStripProps) {
  const found = presentStatistics(report).find((one) => one.id === id);
  const summary = report.measures[id];
  if (!found || !summary) return null;
  const unit = unitOfMeasure(id);
  const step = unit === 'deg' ? 5 : 1;
  const beginners = beginnersOf(id);
  const reach = reachOf([...valuesOf(marks, id), ...(beginners ?? [])], step);
  const least = isSigned(id) ? -reach : 0;
  const px = (value: number) => PAD + ((value - least) / (reach - least)) * (WIDTH - 2 * PAD);
  const up = stepsUpTo(reach, step, isSigned(id) ? 3 : 5);
  const scale = isSigned(id) ? [...up.map((value) => -value), 0, ...up] : [0, ...up];
  const sd = summary.sd ?? 0;
  return (
    <figure className="spread-strip" data-strip={id}>
      <figcaption>
        {say('classPage.strip', { measure: sayMeasure(id), mean: found.mean, sd: found.sd })}
      </figcaption>
      <svg viewBox={`0 0 ${WIDTH} 40`} aria-hidden="true">
        {beginners && (
          <rect
            className="spread-published-band"
            x={px(beginners[0])}
            y="6"
            width={Math.max(2, px(beginners[1]) - px(beginners[0]))}
            height="16"
          />
        )}
        <path className="spread-axes" d={`M${PAD} 22H${WIDTH - PAD}`} />
        {scale.map((value) => (
          <g key={value} className="spread-ring">
            <path d={`M${px(value)} 22v4`} />
            <text x={px(value)} y="37" textAnchor="middle">
              {measureNumberOf(id, value)}
            </text>
          </g>
        ))}
        <path
          className="spread-ticks"
          d={valuesOf(marks, id)
            .map((value) => `M${Math.round(10 * px(value)) / 10} 9V22`)
            .join('')}
        />
        <path
          className="spread-mean"
          d={`M${px(Math.max(least, summary.mean - sd))} 4H${px(summary.mean + sd)}M${px(summary.mean)} 0V8`}
        />
      </svg>
    </figure>
  );
}

/** A mark of the scale: whole, without a sign where the measure has none. */
const measureNumberOf = (id: MeasureId, value: number): string =>
  isSigned(id)
    ? formatNumber({ value, unit: unitOfMeasure(id), signed: value !== 0, exact: true })
    : measureNumber(id, value);
