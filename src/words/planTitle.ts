import type { Plan } from '../core/plan/plan.ts';
import { formatNumber } from './format.ts';
import { say } from './say.ts';

/** What a plan is called: its title, or its site where it has none. */
export const planTitle = ({ title, site }: Plan): string =>
  title === '' ? say('title.site', { tooth: formatNumber({ value: site.tooth, unit: 'count' }) }) : title;
