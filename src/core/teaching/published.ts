import type { Known } from '../measure/limit.ts';
import type { MeasureId } from './measures.ts';

/** A mean of a study, or the range of its groups' means, with its SD or its range where one was given. mm, degrees. */
export interface PublishedValue {
  readonly mean: number | readonly [low: number, high: number];
  readonly sd: number | null;
  /** Least (where it was given) to most. */
  readonly range: readonly [low: number | null, high: number] | null;
}

/** One group of a study of placement; source codes are the catalogue's. */
export interface PublishedSpread {
  readonly id: string;
  readonly who: 'beginners' | 'students' | 'clinicians';
  readonly guide: 'freehand' | 'pilot' | 'full';
  readonly where: 'models' | 'patients';
  readonly values: Readonly<Partial<Record<MeasureId, PublishedValue>>>;
  readonly source: string;
  readonly known: Known;
}

const mean = (value: PublishedValue['mean'], sd: number | null = null): PublishedValue => ({
  mean: value,
  sd,
  range: null,
});
const ranged = (value: number, low: number | null, high: number): PublishedValue => ({
  mean: value,
  sd: null,
  range: [low, high],
});

/** Published accuracy of placement, to stand beside a class or a hand; the beginners first. `platform` is what the studies call entry, neck, coronal or shoulder. */
export const PUBLISHED_SPREADS: readonly PublishedSpread[] = [
  {
    id: 'abduo-freehand',
    who: 'beginners',
    guide: 'freehand',
    where: 'models',
    values: {
      'platform-global': mean([1.01, 1.14]),
      'apex-global': mean([1.02, 1.35]),
      angle: mean([4.65, 7.79]),
    },
    source: 'abduo-2020',
    known: 'read',
  },
  {
    id: 'abduo-full',
    who: 'beginners',
    guide: 'full',
    where: 'models',
    values: {
      'platform-global': mean([0.47, 0.52]),
      'apex-global': mean([0.71, 0.74]),
      angle: mean([2.42, 2.61]),
    },
    source: 'abduo-2020',
    known: 'read',
  },
  {
    id: 'students-pilot',
    who: 'students',
    guide: 'pilot',
    where: 'models',
    values: { angle: mean(5.79, 3.29) },
    source: 'students-2019',
    known: 'read',
  },
  {
    id: 'students-full',
    who: 'students',
    guide: 'full',
    where: 'models',
    values: { angle: mean(3.39, 1.65) },
    source: 'students-2019',
    known: 'read',
  },
  {
    id: 'guentsch-freehand',
    who: 'clinicians',
    guide: 'freehand',
    where: 'models',
    values: { 'platform-global': mean(0.8, 0.35) },
    source: 'guentsch-2022',
    known: 'read',
  },
  {
    id: 'younes-freehand',
    who: 'clinicians',
    guide: 'freehand',
    where: 'patients',
    values: { 'apex-global': ranged(2.11, null, 4.84) },
    source: 'younes-2018',
    known: 'read',
  },
  {
    id: 'varga-freehand',
    who: 'clinicians',
    guide: 'freehand',
    where: 'patients',
    values: { angle: ranged(7.03, 0.7, 21.3) },
    source: 'varga-2020',
    known: 'second-hand',
  },
  {
    id: 'smitkarn-freehand',
    who: 'clinicians',
    guide: 'freehand',
    where: 'patients',
    values: { 'platform-global': mean(1.5), 'apex-global': mean(2.1), angle: mean(6.9) },
    source: 'smitkarn-2019',
    known: 'memory',
  },
  {
    id: 'tapered-full',
    who: 'clinicians',
    guide: 'full',
    where: 'patients',
    values: {
      'platform-global': mean(0.94, 0.53),
      'apex-global': mean(1.36, 0.62),
      angle: mean(4.1, 2.3),
    },
    source: 'tapered-2021',
    known: 'read',
  },
  {
    id: 'tahmaseb-full',
    who: 'clinicians',
    guide: 'full',
    where: 'patients',
    values: { 'platform-global': mean(1.2), 'apex-global': mean(1.4), angle: mean(3.5) },
    source: 'tahmaseb-2018',
    known: 'read',
  },
];
