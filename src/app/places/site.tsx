import { lazy } from 'react';
import type { Bench } from './place.ts';
import { POSE } from './pose.tsx';

/** *Site*: the numbers of the site at the left, all else as where the implant is placed. */
export const SITE: Bench = {
  ...POSE,
  names: { ...POSE.names, rail: 'panel.site' },
  Rail: lazy(() => import('../../panels/SitePanel.tsx')),
};
