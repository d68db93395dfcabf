import { SITES, type Site } from '../../src/core/anatomy/site.ts';
import { defaultSite } from '../../src/core/plan/defaults.ts';
import { siteNumbers } from '../../src/core/plan/siteFields.ts';
import { seeded } from '../oracle/plans.ts';

/** How far most numbers are taken from the mean, as a share of their allowed range, and how many go anywhere in it. */
const NEAR = 0.04;
const ANYWHERE = 0.025;

function put(root: unknown, path: readonly string[], value: number): unknown {
  const [key, ...rest] = path;
  if (key === undefined) return value;
  if (Array.isArray(root)) return root.map((v, i) => (String(i) === key ? put(v, rest, value) : v));
  const node = root as Record<string, unknown>;
  return { ...node, [key]: put(node[key], rest, value) };
}

/** Sites of a seeded series: every number is allowed; most lie about the mean, some anywhere in their range. Invented. */
export function* randomSites(seed: number): Generator<Site> {
  const random = seeded(seed);
  for (let i = 0; ; i++) {
    const mean = defaultSite(SITES[i % SITES.length]);
    const socket = {
      kind: 'socket',
      axis: { ...mean.crown.tilt, faciopalatal: mean.ridge.inclination - 7 },
      width: 0.85 * mean.crown.cervixWidth,
      breadth: 0.85 * mean.crown.cervixDepth,
      depth: 0.8 * mean.crown.rootLength,
      parallel: 3,
      wall: { thickness: 0.8, level: 2 },
      dehiscence: { depth: i % 6 === 2 ? 4 : 0, width: 3 },
    } as const;
    // A tooth that is just lost leaves the ridge as wide as at its neighbours.
    const full = { ...mean.ridge, widths: mean.mesial.ridge.widths };
    let site: Site = i % 3 === 2 ? { ...mean, ridge: full, state: socket } : mean;
    for (const { path, value, low, high } of siteNumbers(site)) {
      const anywhere = random() < ANYWHERE;
      const near = path.endsWith('.depth') ? NEAR / 3 : NEAR;
      const spread = near * (high - low) * (2 * random() - 1);
      const next = anywhere ? low + (high - low) * random() : value + spread;
      site = put(site, path.split('.'), Math.min(high, Math.max(low, next))) as Site;
    }
    yield site;
  }
}
