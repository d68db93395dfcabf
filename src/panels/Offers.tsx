import { say } from '../words/sayFile.ts';
import { Models, type ModelsProps } from './Models.tsx';
import { PictureOffers } from './PictureOffers.tsx';
import { TableOffers } from './TableOffers.tsx';

/** Pictures, drawings, tables and solid models; loaded when they are first asked for. */
export default function Offers({ stores, maker }: ModelsProps) {
  return (
    <>
      <PictureOffers stores={stores} />
      <TableOffers stores={stores} />
      <Models stores={stores} maker={maker} />
      <p className="caption">{say('handOver.note')}</p>
    </>
  );
}
