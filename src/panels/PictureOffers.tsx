import { useState } from 'react';
import { DRAWN_AT, drawingSvg, PLAN_DRAWINGS } from '../io/drawings.ts';
import { evaluationOf } from '../state/evaluation.ts';
import { photographerOf } from '../state/photographer.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { formatNumber } from '../words/format.ts';
import { say } from '../words/sayFile.ts';
import { download } from './files.ts';
import { Offer, OfferGroup } from './Offer.tsx';

/** Widths that a picture of the model comes in, px: a slide, a page, a poster. */
const WIDTHS = [1200, 2400, 3600] as const;

const count = (value: number): string => formatNumber({ value, unit: 'count' });

/** The model as it stands on the stage, and the drawings of the plan, as files. */
export function PictureOffers({ stores }: { stores: PlanStores }) {
  const { document, live } = stores;
  const take = useSelected(photographerOf(live), (state) => state.take);
  const [failed, setFailed] = useState(false);
  const toothNow = () => count(document.getState().plan.site.tooth);
  const photograph = async (width: number) => {
    try {
      const png = await take?.(width);
      if (png) download(say('handOver.file.model', { tooth: toothNow() }), png, 'image/png');
      setFailed(!png);
    } catch {
      setFailed(true);
    }
  };
  const lacking = failed ? 'handOver.noPicture' : 'handOver.noModel';
  return (
    <OfferGroup heading={say('handOver.pictures')}>
      <Offer
        what={say('handOver.model')}
        lacking={take && !failed ? '' : say(lacking)}
        kinds={WIDTHS.map((width) => ({
          key: `${width}`,
          kind: say('handOver.wide', { width: count(width) }),
          onTake: () => void photograph(width),
        }))}
      />
      {PLAN_DRAWINGS.map((kind) => (
        <Offer
          key={kind}
          what={say(`handOver.drawing.${kind}`, { scale: count(DRAWN_AT[kind]) })}
          kinds={[
            {
              key: 'svg',
              kind: say('handOver.svg'),
              onTake: () => {
                const { plan } = document.getState();
                const name = say(`handOver.file.${kind}`, { tooth: toothNow() });
                download(name, drawingSvg(evaluationOf(plan), kind), 'image/svg+xml');
              },
            },
          ]}
        />
      ))}
    </OfferGroup>
  );
}
