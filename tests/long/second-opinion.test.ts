import { secondOpinion } from '../oracle/secondOpinion.ts';

secondOpinion({ sites: 16, posesPerSite: 2, seed: 77 });
