import type { DepthMark } from '../../core/drilling/depthMark.ts';
import type { Drilling } from '../../core/plan/drilling.ts';
import { kitOf } from '../../core/plan/inHand.ts';
import type { Plan } from '../../core/plan/plan.ts';
import { drillRuler } from '../../paper/rulers.ts';
import { presentSteps } from '../../words/presentDrilling.ts';
import { markText, presentKitTitle } from '../../words/presentKit.ts';
import { bareMm, presentSeatPlan } from '../../words/presentSheet.ts';
import { say } from '../../words/saySheet.ts';
import { sayTool } from '../../words/sayTool.ts';
import { PaperDrawing } from './PaperDrawing.tsx';
import { count } from './SheetHead.tsx';
import { SheetLines } from './SheetLines.tsx';

const COLUMNS = ['step', 'depth', 'mark', 'onDrill', 'speed', 'look'] as const;

interface DrillProps {
  plan: Plan;
  drilling: Drilling | null;
}

/** The order of drilling as a table with a box to tick at each step. */
export function SheetDrills({ plan, drilling }: DrillProps) {
  if (!drilling) return <p>{say('sheet.drillsNone')}</p>;
  const kit = kitOf(plan);
  const { steps } = drilling.plan;
  const shown = presentSteps(drilling.plan, kit, plan.implant);
  return (
    <section>
      <h3>{say('sheet.drills')}</h3>
      <table className="paper-table paper-drills">
        <thead>
          <tr>
            <td />
            {COLUMNS.map((column) => (
              <th key={column} scope="col">
                {say(`sheet.col.${column}`)}
              </th>
            ))}
            <th scope="col">{say('sheet.col.done')}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map(({ key, title, tool, onDrill, speed, look }, i) => (
            <tr key={key} data-sheet-step={steps[i].reason}>
              <td>{count(i + 1)}</td>
              <th scope="row">
                {title} <small>{tool}</small>
              </th>
              <td className="paper-number">{steps[i].reason === 'dry-test' ? '' : bareMm(steps[i].depth)}</td>
              <td className="paper-number">{steps[i].mark ? bareMm(steps[i].mark?.value ?? 0) : ''}</td>
              <td>{onDrill}</td>
              <td>{speed}</td>
              <td className="paper-small">{look}</td>
              <td>
                <span className="paper-box" />
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="paper-small">
        {say('sheet.drillsNote', { read: say(`depth.read.${drilling.chain.mark.read}`) })}{' '}
        {say('sheet.kit', { kit: presentKitTitle(kit) })}
      </p>
    </section>
  );
}

/** The pilot's stops: at the full depth, and before it to look at the direction. */
function stopsOf({ plan }: Drilling): { full: DepthMark | null; first: DepthMark | null } {
  const markOf = (reason: 'full-depth' | 'direction') =>
    plan.steps.find((step) => step.reason === reason)?.mark ?? null;
  return { full: markOf('full-depth'), first: markOf('direction') };
}

/** One drill in true scale with the mark to stop at, and how the implant is to be seated. */
export function SheetRuler({ plan, drilling }: DrillProps) {
  const stops = drilling && stopsOf(drilling);
  const [pilot] = kitOf(plan).drills;
  if (!drilling || !stops?.full) return null;
  const { full, first } = stops;
  const drawing = drillRuler(
    pilot,
    { value: full.value, words: say('sheet.stopHere') },
    first && { value: first.value, words: say('sheet.firstStop', { mark: markText(first.value) }) },
  );
  return (
    <div className="paper-pair paper-pair-ruler">
      <section>
        <h3>{say('sheet.ruler', { tool: sayTool(pilot) })}</h3>
        <PaperDrawing drawing={drawing} name="drill" />
        <p>
          <b>{say('sheet.stopWhen', { mark: bareMm(full.value) })}</b>
        </p>
        <p className="paper-small">
          {say('sheet.readAt', { read: say(`depth.read.${full.read}`) })}{' '}
          {full.edges &&
            say('sheet.edges', { lower: bareMm(full.edges.lower), higher: bareMm(full.edges.higher) })}
        </p>
      </section>
      <section>
        <h3>{say('sheet.seating')}</h3>
        <SheetLines lines={presentSeatPlan(plan, drilling)} />
      </section>
    </div>
  );
}
