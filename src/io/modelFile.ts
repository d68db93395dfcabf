import type { Model } from '../solids/model.ts';
import { modelWordsOf } from '../words/sayModel.ts';
import { glbOf } from './glb.ts';
import { stlOf } from './stl.ts';
import { threeMfOf } from './threemf.ts';

export const MODEL_FORMATS = ['stl', '3mf', 'glb'] as const;
export type ModelFormat = (typeof MODEL_FORMATS)[number];

export const MEDIA_TYPES: Readonly<Record<ModelFormat, string>> = {
  stl: 'model/stl',
  '3mf': 'model/3mf',
  glb: 'model/gltf-binary',
};

/** A file's name: what it is, and the site. */
export const modelFileName = ({ kind, tooth }: Pick<Model, 'kind' | 'tooth'>, format: ModelFormat): string =>
  `${kind}-${tooth}.${format}`;

/** The bytes of a model in a format. */
export async function modelFile(model: Model, format: ModelFormat): Promise<Uint8Array<ArrayBuffer>> {
  const words = modelWordsOf(model);
  if (format === 'stl') return stlOf(model.mesh, words.header);
  if (format === '3mf') return threeMfOf(model, words);
  return glbOf(model, words);
}
