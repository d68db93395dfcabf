import { useMemo } from 'react';
import type { Site } from '../core/anatomy/site.ts';
import { loweredCrest } from '../core/plan/loweredCrest.ts';
import type { ShapeFit as Fit } from '../core/plan/shapeFit.ts';
import { StatusGlyph } from '../marks/StatusGlyph.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { presentLoweredCrest } from '../words/presentLoweredCrest.ts';
import { presentReading } from '../words/presentReading.ts';
import { presentShape } from '../words/presentShape.ts';
import { say } from '../words/say.ts';
import { useShapeFits } from './useShapeFits.ts';
import './fit.css';

interface RowProps {
  readonly fit: Fit;
  /** It is the shape on the table. */
  readonly own: boolean;
  readonly onUse: (fit: Fit) => void;
}

function FitRow({ fit, own, onUse }: RowProps) {
  const shape = presentShape(fit.shape);
  const { label, quantity, status, mark } = presentReading(fit.worst);
  return (
    <tr data-fit={fit.shape.name} data-status={mark} aria-current={own || undefined}>
      <th scope="row">{shape}</th>
      <td className="fit-mark">
        <StatusGlyph mark={mark} />
      </td>
      <td className="fit-status">{status}</td>
      <td>{label}</td>
      <td className="fit-value">{quantity}</td>
      <td>
        <button
          type="button"
          className="rail-word"
          aria-label={say('fit.useShape', { shape })}
          onClick={() => onUse(fit)}
        >
          {say('fit.use')}
        </button>
      </td>
    </tr>
  );
}

/** What lowering the crest would give and cost; nothing where the crest is not whole. */
function CrestLine({ site }: { site: Site }) {
  const lowered = useMemo(() => loweredCrest(site), [site]);
  return lowered && <p data-lowered-crest={true}>{presentLoweredCrest(lowered)}</p>;
}

interface ShapeFitProps {
  readonly stores: PlanStores;
  readonly close: () => void;
}

/** All shapes of the library, each at its best pose in this site, and what holds it back. Nothing is moved until a row's word is pressed. */
export default function ShapeFit({ stores, close }: ShapeFitProps) {
  const { site, implant } = usePlan(stores);
  const { fits, done } = useShapeFits(stores);
  const use = ({ shape, pose }: Fit) => {
    close();
    stores.document.edit(say('edit.fit', { shape: presentShape(shape) }), (plan) => ({
      ...plan,
      implant: shape,
      pose,
    }));
  };
  return (
    <>
      <table className="fits">
        <caption className="caption">{say('fit.caption')}</caption>
        <thead>
          <tr>
            <th scope="col">{say('fit.shape')}</th>
            <td />
            <th scope="col">{say('fit.status')}</th>
            <th scope="col">{say('fit.heldBack')}</th>
            <th scope="col" className="fit-value">
              {say('fit.value')}
            </th>
            <td />
          </tr>
        </thead>
        <tbody>
          {fits.map((fit) => (
            <FitRow key={fit.shape.name} fit={fit} own={fit.shape.name === implant.name} onUse={use} />
          ))}
        </tbody>
      </table>
      <p className="caption" role="status" data-fits={done ? 'done' : 'searching'}>
        {say(done ? 'fit.done' : 'fit.searching')}
      </p>
      <CrestLine site={site} />
    </>
  );
}
