import { useMemo } from 'react';
import { totalLength } from '../../core/implant/shape.ts';
import type { Plan } from '../../core/plan/plan.ts';
import type { Cloud } from '../../core/spread/cloud.ts';
import { deviation } from '../../core/spread/deviation.ts';
import { measureSummaries } from '../../core/teaching/classReport.ts';
import { measuresOf } from '../../core/teaching/measures.ts';
import { say } from '../../words/sayStray.ts';
import { SpreadTarget } from '../class/SpreadTarget.tsx';
import '../class/class.css';

/** Both ends of the implant from above, a dot for each placement of a cloud; open where a limit is broken. */
export function StrayCloud({ plan, cloud }: { plan: Plan; cloud: Cloud }) {
  const { pose, implant } = plan;
  const marks = useMemo(
    () =>
      cloud.placed.map(({ pose: placed, broken }) => ({
        label: '',
        measures: measuresOf(deviation(pose, placed, totalLength(implant), implant.index)),
        done: !broken,
      })),
    [cloud, pose, implant],
  );
  const report = useMemo(() => ({ measures: measureSummaries(marks) }), [marks]);
  return (
    <>
      <div className="spread-targets">
        <SpreadTarget end="platform" marks={marks} report={report} beside={false} />
        <SpreadTarget end="apex" marks={marks} report={report} beside={false} />
      </div>
      <ul className="spread-key">
        <li data-key="done">{say('stray.key.sound')}</li>
        <li data-key="open">{say('stray.key.broken')}</li>
        <li data-key="mean">{say('stray.key.mean')}</li>
      </ul>
    </>
  );
}
