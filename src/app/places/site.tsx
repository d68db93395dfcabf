import { SitePanel } from '../../panels/SitePanel.tsx';
import { say } from '../../words/say.ts';
import type { Bench } from './place.ts';
import { POSE } from './pose.tsx';

/** *Site*: the numbers of the site at the left, all else as where the implant is placed. */
export const SITE: Bench = {
  ...POSE,
  names: { ...POSE.names, rail: say('panel.site') },
  Rail: SitePanel,
};
