import { lazy, Suspense, useCallback, useEffect, useLayoutEffect, useState } from 'react';
import type { Plan } from '../../core/plan/plan.ts';
import { SheetPage } from '../../panels/sheet/SheetPage.tsx';
import { SHEET_VIEWS, type SheetPicture } from '../../panels/sheet/SheetPictures.tsx';
import type { Portrait } from '../../scene/Portraits.tsx';
import { useSelected } from '../../state/useSelected.ts';
import type { DrawnLedger } from '../revision.ts';
import type { Page, PlaceProps } from './place.ts';

const Portraits = lazy(() => import('../../scene/Portraits.tsx'));

/** Width of a picture on the sheet, px: some 88 mm at 300 to the inch. */
const WIDTH = 1050;

interface Taken {
  readonly plan: Plan;
  readonly pictures: readonly SheetPicture[];
}

/** Whether what was put on the page is on the screen. */
function usePainted(): boolean {
  const [painted, setPainted] = useState(false);
  useEffect(() => {
    let task = 0;
    const frame = requestAnimationFrame(() => {
      task = window.setTimeout(() => setPainted(true));
    });
    return () => {
      cancelAnimationFrame(frame);
      clearTimeout(task);
    };
  }, []);
  return painted;
}

/** *Sheet*: what goes to the chair, as paper. Its pictures are taken on a stage out of sight once the pages are on the screen; until they are, the page is not drawn. */
function SheetPlace({ stores, ledger }: PlaceProps & { ledger: DrawnLedger }) {
  const revision = useSelected(stores.live, (state) => state.revision);
  const plan = useSelected(stores.document, (state) => state.plan);
  const [taken, setTaken] = useState<Taken | null>(null);
  const [absent, setAbsent] = useState(false);
  const painted = usePainted();
  const pictures = absent ? NONE : taken?.plan === plan ? taken.pictures : null;

  const onTaken = useCallback((of: Plan, portraits: readonly Portrait[]) => {
    const made = portraits.map(({ view, png }) => ({ view, address: URL.createObjectURL(png) }));
    setTaken({ plan: of, pictures: made });
  }, []);
  const onAbsent = useCallback(() => setAbsent(true), []);

  useEffect(
    () => () => {
      for (const { address } of taken?.pictures ?? []) URL.revokeObjectURL(address);
    },
    [taken],
  );
  useLayoutEffect(() => {
    if (absent) ledger.absent('stage');
    else if (pictures) ledger.drawn('stage', revision);
  }, [ledger, revision, pictures, absent]);

  return (
    <>
      <SheetPage stores={stores} pictures={pictures} />
      {painted && (
        <Suspense fallback={null}>
          <Portraits
            stores={stores}
            views={SHEET_VIEWS}
            width={WIDTH}
            onTaken={onTaken}
            onAbsent={onAbsent}
          />
        </Suspense>
      )}
    </>
  );
}

const NONE: readonly SheetPicture[] = [];

export const SHEET: Page = { kind: 'page', Page: SheetPlace };
