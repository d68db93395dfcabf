import type { ModelKind } from '../solids/model.ts';
import { sayModelFile } from '../words/sayModel.ts';

export const MODEL_FORMATS = ['stl', '3mf', 'glb'] as const;
export type ModelFormat = (typeof MODEL_FORMATS)[number];

export const MEDIA_TYPES: Readonly<Record<ModelFormat, string>> = {
  stl: 'model/stl',
  '3mf': 'model/3mf',
  glb: 'model/gltf-binary',
};

/** A file's name: the site and what it is. */
export const modelFileName = (kind: ModelKind, tooth: number, format: ModelFormat): string =>
  `${sayModelFile(kind, tooth)}.${format}`;
