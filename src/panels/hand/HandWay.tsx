import { type ReactNode, useMemo } from 'react';
import { handSpread, type OwnAttempt, type Way } from '../../core/spread/hand.ts';
import { measureSummaries } from '../../core/teaching/classReport.ts';
import { measuresOf } from '../../core/teaching/measures.ts';
import { presentHand } from '../../words/presentBench.ts';
import { say } from '../../words/sayTeach.ts';
import { SpreadTarget } from '../class/SpreadTarget.tsx';

/** Both ends of the implant from above, the plan in the middle. */
function Drawn({ attempts }: { attempts: readonly OwnAttempt[] }) {
  const marks = useMemo(
    () => attempts.map(({ deviation }) => ({ label: '', measures: measuresOf(deviation), done: true })),
    [attempts],
  );
  const report = useMemo(() => ({ measures: measureSummaries(marks) }), [marks]);
  return (
    <>
      <div className="spread-targets">
        <SpreadTarget end="platform" marks={marks} report={report} />
        <SpreadTarget end="apex" marks={marks} report={report} />
      </div>
      <ul className="spread-key">
        <li data-key="done">{say('ownHand.keyOne')}</li>
        <li data-key="mean">{say('ownHand.keyMean')}</li>
        <li data-key="published">{say('classPage.beginners')}</li>
      </ul>
    </>
  );
}

interface HandWayProps {
  way: Way;
  all: readonly OwnAttempt[];
  /** What is done to the attempts of this way. */
  children: ReactNode;
}

/** The spread of the own hand in one way: how many attempts, mean and SD of each deviation, and where they lie. */
export function HandWay({ way, all, children }: HandWayProps) {
  const attempts = useMemo(() => all.filter((attempt) => attempt.way === way), [all, way]);
  const shown = presentHand(handSpread(attempts, way), way);
  return (
    <section className="hand-way" data-way={way} aria-label={shown.heading}>
      <h2>{shown.heading}</h2>
      <p className="hand-count">{shown.count}</p>
      {children}
      {shown.rows.length > 0 && (
        <>
          <table className="hand-table">
            <thead>
              <tr>
                <th scope="col">{say('ownHand.measure')}</th>
                <th scope="col">{say('ownHand.mean')}</th>
                <th scope="col">{say('ownHand.sd')}</th>
              </tr>
            </thead>
            <tbody>
              {shown.rows.map(({ id, label, mean, sd }) => (
                <tr key={id} data-measure={id}>
                  <th scope="row">{label}</th>
                  <td>{mean}</td>
                  <td>{sd}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <Drawn attempts={attempts} />
        </>
      )}
    </section>
  );
}
