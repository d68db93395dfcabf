import type { PlanStores } from '../state/stores.ts';
import { PictureOffers } from './PictureOffers.tsx';
import { TableOffers } from './TableOffers.tsx';

/** Pictures, drawings and tables; loaded when they are first asked for. */
export default function Offers({ stores }: { stores: PlanStores }) {
  return (
    <>
      <PictureOffers stores={stores} />
      <TableOffers stores={stores} />
    </>
  );
}
