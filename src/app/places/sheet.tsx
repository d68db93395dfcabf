import { lazy, useLayoutEffect, useState } from 'react';
import type { SheetPicture } from '../../panels/sheet/SheetPictures.tsx';
import { useSelected } from '../../state/useSelected.ts';
import type { DrawnLedger } from '../revision.ts';
import type { Page, Views } from './place.ts';

const SheetPage = lazy(() => import('../../panels/sheet/SheetPage.tsx'));

/** *Sheet*: what goes to the chair, as paper. */
function SheetPlace({ stores, ledger }: Views & { ledger: DrawnLedger }) {
  const revision = useSelected(stores.live, (state) => state.revision);
  const [pictures] = useState<readonly SheetPicture[] | null>([]);
  useLayoutEffect(() => ledger.drawn('stage', revision), [ledger, revision]);
  return <SheetPage stores={stores} pictures={pictures} />;
}

export const SHEET: Page = { kind: 'page', Page: SheetPlace };
