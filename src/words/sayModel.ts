import type { Model, ModelKind, NoModel } from '../solids/model.ts';
import { formatNumber, formatQuantity } from './format.ts';
import { modelWords } from './models.en.ts';
import { sayerOf } from './sayer.ts';

const say = sayerOf(modelWords);

/** What a model's file says of itself. */
export interface ModelWords {
  readonly title: string;
  readonly caution: string;
  /** At most 80 plain characters, for the one format that has no more room. */
  readonly header: string;
}

/** A model's name with its site. */
export const modelTitle = (kind: ModelKind, tooth: number): string =>
  say('models.at', { model: say(`models.${kind}`), tooth: formatNumber({ value: tooth, unit: 'count' }) });

export const modelWordsOf = ({ kind, tooth }: Pick<Model, 'kind' | 'tooth'>): ModelWords => ({
  title: modelTitle(kind, tooth),
  caution: say('models.caution'),
  header: say('models.header'),
});

/** Name of a model's file without its ending. */
export const sayModelFile = (kind: ModelKind, tooth: number): string =>
  say('models.file', {
    tooth: formatNumber({ value: tooth, unit: 'count' }),
    model: say(`models.file.${kind}`),
  });

/** What is known of a model that has been made. */
export type ModelFigures = Pick<Model, 'size' | 'volume' | 'leftOut'> & { readonly triangles: number };

/** Size, volume and triangles in one line. */
export function sayFigures({ size, volume, triangles }: ModelFigures): string {
  const [x, y] = size.map((value) => formatNumber({ value, unit: 'mm' }));
  return say('models.figures', {
    x,
    y,
    z: formatQuantity({ value: size[2], unit: 'mm' }),
    volume: formatQuantity({ value: volume, unit: 'mm3' }),
    triangles: formatNumber({ value: triangles, unit: 'count' }),
  });
}

/** What was left out of a model, or nothing. */
export function sayLeftOut({ leftOut }: Pick<Model, 'leftOut'>): string {
  if (leftOut === 0) return '';
  if (leftOut === 1) return say('models.leftOut.one');
  return say('models.leftOut.many', { count: formatNumber({ value: leftOut, unit: 'count' }) });
}

/** Why a model is not offered. */
export const sayNoModel = (why: NoModel): string =>
  why.code === 'open'
    ? say('models.fault.open', { count: formatNumber({ value: why.count, unit: 'count' }) })
    : say(`models.fault.${why.code}`);
