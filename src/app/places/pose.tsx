import { PoseRail } from '../../panels/PoseRail.tsx';
import { ReadingsTable } from '../../panels/ReadingsTable.tsx';
import { Sentence } from '../../panels/Sentence.tsx';
import { WallProfile } from '../../panels/WallProfile.tsx';
import type { Bench } from './place.ts';

/** *Place*: the implant set by hand, its walls beside the section, its readings under both. */
export const POSE: Bench = {
  kind: 'bench',
  names: { rail: 'panel.pose', profile: 'panel.profile', readings: 'panel.readings' },
  shown: ({ stores }) => stores,
  Sentence,
  Rail: PoseRail,
  Beside: WallProfile,
  Under: ReadingsTable,
};
