import { PoseRail } from '../../panels/PoseRail.tsx';
import { ReadingsTable } from '../../panels/ReadingsTable.tsx';
import { Section } from '../../panels/Section.tsx';
import { Sentence } from '../../panels/Sentence.tsx';
import { WallProfile } from '../../panels/WallProfile.tsx';
import { say } from '../../words/say.ts';
import type { Bench } from './place.ts';

/** *Place*: the implant set by hand, its walls beside the section, its readings under both. */
export const POSE: Bench = {
  kind: 'bench',
  names: { rail: say('panel.pose'), profile: say('panel.profile'), readings: say('panel.readings') },
  shown: (stores) => stores,
  Sentence,
  Rail: PoseRail,
  Section,
  Beside: WallProfile,
  Under: ReadingsTable,
};
