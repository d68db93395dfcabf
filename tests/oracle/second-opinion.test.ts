import { secondOpinion } from './secondOpinion.ts';

// Eight of the sixteen sites of the long run.
secondOpinion({ sites: 8, posesPerSite: 2, seed: 77 });
