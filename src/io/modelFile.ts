import type { Model } from '../solids/model.ts';
import { modelWordsOf } from '../words/sayModel.ts';
import { glbOf } from './glb.ts';
import type { ModelFormat } from './modelFormats.ts';
import { stlOf } from './stl.ts';
import { threeMfOf } from './threemf.ts';

/** The bytes of a model in a format. */
export async function modelFile(model: Model, format: ModelFormat): Promise<Uint8Array<ArrayBuffer>> {
  const words = modelWordsOf(model);
  if (format === 'stl') return stlOf(model.mesh, words.header);
  if (format === '3mf') return threeMfOf(model, words);
  return glbOf(model, words);
}
