import { useId } from 'react';
import { IMPLANT_LIBRARY, libraryShape } from '../core/implant/library.ts';
import type { Fixing } from '../core/measure/limit.ts';
import { useShape as withShape } from '../core/plan/edits.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { presentShape } from '../words/presentShape.ts';
import { say } from '../words/say.ts';
import { ShapeFitMenu } from './ShapeFitMenu.tsx';

const FIXINGS = ['cemented', 'screw-gum', 'screw-bone'] as const satisfies readonly Fixing[];
const OWN = 'own';

/** Which implant, and how the crown is fixed to it: each choice is one undo step. */
export function ShapeSelects({ stores }: { stores: PlanStores }) {
  const { document } = stores;
  const implant = useSelected(document, ({ plan }) => plan.implant);
  const fixing = useSelected(document, ({ plan }) => plan.fixing);
  const shapeId = useId();
  const fixingId = useId();
  const listed = libraryShape(implant.name);
  const own = listed === undefined || JSON.stringify(listed) !== JSON.stringify(implant);

  const chooseShape = (name: string) => {
    const shape = libraryShape(name);
    if (shape)
      document.edit(say('edit.shape', { shape: presentShape(shape) }), (plan) => withShape(plan, shape));
  };
  const chooseFixing = (value: string) => {
    const next = FIXINGS.find((one) => one === value);
    if (!next) return;
    document.edit(say('edit.fixing', { fixing: say(`fixing.${next}`) }), (plan) => ({
      ...plan,
      fixing: next,
    }));
  };

  return (
    <div className="rail-group rail-shape">
      <label className="caption" htmlFor={shapeId}>
        {say('rail.shape')}
      </label>
      <select
        id={shapeId}
        value={own ? OWN : implant.name}
        onChange={(event) => chooseShape(event.target.value)}
      >
        {own && <option value={OWN}>{say('rail.ownShape', { shape: presentShape(implant) })}</option>}
        {IMPLANT_LIBRARY.map((shape) => (
          <option key={shape.name} value={shape.name}>
            {presentShape(shape)}
          </option>
        ))}
      </select>
      <ShapeFitMenu stores={stores} />
      <label className="caption" htmlFor={fixingId}>
        {say('rail.fixing')}
      </label>
      <select id={fixingId} value={fixing} onChange={(event) => chooseFixing(event.target.value)}>
        {FIXINGS.map((one) => (
          <option key={one} value={one}>
            {say(`fixing.${one}`)}
          </option>
        ))}
      </select>
    </div>
  );
}
