import { useState } from 'react';
import type { Plan } from '../core/plan/plan.ts';
import { MEDIA_TYPES, MODEL_FORMATS, type ModelFormat, modelFileName } from '../io/modelFormats.ts';
import { MODEL_KINDS, type ModelKind } from '../solids/model.ts';
import type { PlanStores } from '../state/stores.ts';
import { useSelected } from '../state/useSelected.ts';
import { say } from '../words/sayFile.ts';
import { sayFigures, sayLeftOut, sayNoModel } from '../words/sayModel.ts';
import type { ModelMaker } from '../worker/modelMaker.ts';
import type { ModelOutcome } from '../worker/modelMessages.ts';
import { download } from './files.ts';
import { Offer, OfferGroup } from './Offer.tsx';

export interface ModelsProps {
  stores: PlanStores;
  /** Null in a copy of the program that has no worker. */
  maker: ModelMaker | null;
}

type Made = Partial<Record<ModelKind, ModelOutcome>>;

/** What has been made of which plan, and whether more is being made. */
interface Bench {
  readonly plan: Plan | null;
  readonly made: Made;
  readonly busy: boolean;
}

const IDLE: Bench = { plan: null, made: {}, busy: false };

/** Why a kind is not to be had now; '' where it is. */
function lackOf(outcome: ModelOutcome | undefined, busy: boolean): string {
  if (!outcome) return busy ? say('models.making') : '';
  if (outcome.outcome === 'none') return sayNoModel(outcome.why);
  return outcome.outcome === 'fault' ? say('models.failed') : '';
}

const stateOf = (made: Made, busy: boolean): string => {
  if (busy) return 'busy';
  return Object.keys(made).length > 0 ? 'made' : 'none';
};

/** Makes every kind in turn, tells of each as it is found to be a solid, and saves those that are. */
function useBench({ stores, maker }: ModelsProps) {
  const plan = useSelected(stores.document, (state) => state.plan);
  const [bench, setBench] = useState(IDLE);
  const now = bench.plan === plan ? bench : IDLE;
  const make = async (make: ModelMaker): Promise<void> => {
    setBench({ plan, made: {}, busy: true });
    for (const kind of MODEL_KINDS) {
      const outcome = await make({ plan, kind, format: null });
      setBench((old) => (old.plan === plan ? { ...old, made: { ...old.made, [kind]: outcome } } : old));
    }
    setBench((old) => (old.plan === plan ? { ...old, busy: false } : old));
  };
  const save = async (make: ModelMaker, kind: ModelKind, format: ModelFormat): Promise<void> => {
    const outcome = await make({ plan, kind, format });
    if (outcome.outcome === 'file')
      download(modelFileName(kind, plan.site.tooth, format), outcome.bytes, MEDIA_TYPES[format]);
    else setBench((old) => ({ ...old, made: { ...old.made, [kind]: outcome } }));
  };
  return {
    ...now,
    make: maker && (() => make(maker)),
    save: (kind: ModelKind, format: ModelFormat) => maker && save(maker, kind, format),
  };
}

/** Practice models and dummies: each is made, looked at as a solid and only then offered, with its size, volume and triangles. */
export function Models(props: ModelsProps) {
  const { made, busy, make, save } = useBench(props);
  return (
    <OfferGroup heading={say('models.title')}>
      <li className="offer" data-models={stateOf(made, busy)}>
        <span aria-live="polite">
          {say('models.purpose')}
          {!make && <small>{say('models.noWorker')}</small>}
          {busy && <small>{say('models.making')}</small>}
        </span>
        {make && (
          <button type="button" disabled={busy} onClick={make}>
            {say('models.make')}
          </button>
        )}
      </li>
      {(make ? MODEL_KINDS : []).map((kind) => {
        const outcome = made[kind];
        const what = say(`models.${kind}`);
        if (!outcome && !busy)
          return (
            <li key={kind} className="offer offer-later">
              {what}
            </li>
          );
        return (
          <Offer
            key={kind}
            what={what}
            lacking={lackOf(outcome, busy)}
            kinds={MODEL_FORMATS.map((format) => ({
              key: format,
              kind: say(`models.${format}`),
              onTake: () => save(kind, format),
            }))}
          >
            {outcome?.outcome === 'figures' && (
              <small data-model={kind}>
                {sayFigures(outcome.figures)} {sayLeftOut(outcome.figures)}
              </small>
            )}
          </Offer>
        );
      })}
    </OfferGroup>
  );
}
