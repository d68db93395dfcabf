/** Seeded random plans within sensible anatomical ranges, and slabs whose answers can be worked by hand. */
import type {
  Neighbour,
  Site,
  SiteCode,
  SocketState,
  ToothNumbers,
  WidthEntry,
} from '../../src/core/anatomy/site.ts';
import type { ImplantShape } from '../../src/core/implant/shape.ts';
import { PLAN_VERSION, type Plan } from '../../src/core/plan/plan.ts';
import { DEFAULT_CROWN } from '../../src/core/restoration/crownChoices.ts';
import { seeded, tan } from './numbers.ts';

export { seeded };

type Random = () => number;
const within = (random: Random, lo: number, hi: number): number => lo + (hi - lo) * random();
const pick = <T>(random: Random, list: readonly T[]): T => list[Math.floor(random() * list.length)]!;

const CODES: readonly SiteCode[] = [11, 12, 13, 14, 21, 22, 23, 24];

/** Crown length, root length, crown width, cervix width, crown depth, cervix depth, CEJ curves (Nelson and Ash, table 1-1). */
const TABLE: readonly (readonly number[])[] = [
  [10.5, 13.0, 8.5, 7.0, 7.0, 6.0, 3.5, 2.5],
  [9.0, 13.0, 6.5, 5.0, 6.0, 5.0, 3.0, 2.0],
  [10.0, 17.0, 7.5, 5.5, 8.0, 7.0, 2.5, 1.5],
  [8.5, 14.0, 7.0, 5.0, 9.0, 8.0, 1.0, 0.0],
  [8.5, 14.0, 7.0, 5.0, 9.0, 8.0, 1.0, 0.0],
];
/** Whole-tooth axes, faciopalatal and mesiodistal. */
const LEANS: readonly (readonly [number, number])[] = [
  [28, 2],
  [26, 7],
  [16, 8],
  [9, 3],
  [9, 0],
];

function toothNumbers(random: Random, place: number): ToothNumbers {
  const [a, b, c, d, e, f, g, h] = TABLE[place - 1]!.map((x) => x * within(random, 0.93, 1.07)) as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  return {
    crownLength: a,
    rootLength: b,
    crownWidth: c,
    cervixWidth: d,
    crownDepth: e,
    cervixDepth: f,
    cejCurveMesial: g,
    cejCurveDistal: h,
  };
}

function neighbour(random: Random, place: number): Neighbour {
  const [fp, md] = LEANS[place - 1]!;
  return {
    ...toothNumbers(random, place),
    tilt: {
      faciopalatal: fp + within(random, -6, 6),
      mesiodistal: md + within(random, -4, 4),
    },
    rootTilt: { faciopalatal: within(random, -4, 4), mesiodistal: within(random, -5, 5) },
    boneLevel: within(random, -0.3, 2),
    cejAboveBone: within(random, 1, 2.5),
    ridge: {
      widths: widths(random, [1, 4, 8, 12], within(random, 7.5, 9), within(random, 9, 11)),
      inclination: fp + within(random, 4, 18),
    },
  };
}

function widths(random: Random, depths: readonly number[], crest: number, deep: number): WidthEntry[] {
  const facialShare = within(random, 0.4, 0.55);
  const last = depths.at(-1)!;
  return depths.map((depth) => {
    const total = crest + ((deep - crest) * (depth - depths[0]!)) / (last - depths[0]!);
    return {
      depth,
      facial: total * facialShare * within(random, 0.92, 1.08),
      palatal: total * (1 - facialShare) * within(random, 0.92, 1.08),
    };
  });
}

function socket(random: Random, place: number, fp: number, dehiscent: boolean): SocketState {
  const [, rootLength, , cervixWidth, , cervixDepth] = TABLE[place - 1]! as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const depth = rootLength * within(random, 0.75, 0.9);
  return {
    kind: 'socket',
    axis: { faciopalatal: fp + within(random, -4, 4), mesiodistal: within(random, -4, 4) },
    width: cervixWidth * within(random, 0.8, 0.95),
    breadth: cervixDepth * within(random, 0.8, 0.95),
    depth,
    parallel: depth * within(random, 0.1, 0.35),
    wall: { thickness: within(random, 0.4, 1.4), level: within(random, 1, 3) },
    dehiscence: dehiscent
      ? { depth: within(random, 2, 6), width: within(random, 2, 5) }
      : { depth: 0, width: 3 },
  };
}

/** A site of the seeded series: every tooth code in turn, every third a socket-free narrow one, every fourth a fresh socket. */
export function randomSite(random: Random, index: number): Site {
  const tooth = CODES[index % CODES.length]!;
  const place = tooth % 10;
  const fresh = index % 4 === 3 || index % 8 === 2;
  const straight = index % 5 === 4;
  const lean = LEANS[place - 1]!;
  const crownTilt = {
    faciopalatal: lean[0] + within(random, -6, 6),
    mesiodistal: lean[1] + within(random, -4, 4),
  };
  const wide = fresh ? within(random, 7.5, 9.5) : within(random, 4.5, 9);
  const undercut = random() < 0.6;
  const level = within(random, 3.5, 8);
  const depths = index % 2 === 0 ? [1, 4, 8, 12] : [1, 3, 5.5, 11, 14];
  return {
    tooth,
    arch: { width: within(random, 32, 38), depth: straight ? 0 : within(random, 7, 12) },
    ridge: {
      widths: widths(random, depths, wide, wide + within(random, 0.5, 3)),
      blend: { from: within(random, 1.5, 2.5), to: within(random, 5.5, 7.5) },
      crestRounding: within(random, 0.4, 1.8),
      undercut: {
        depth: undercut ? within(random, 0.3, 1.5) : 0,
        level,
        halfHeight: within(random, 2, 4),
      },
      inclination: lean[0] + within(random, 0, 16),
      height: within(random, 13, 21),
      floor: place > 2 ? 'sinus' : 'nose',
      eminence: { height: within(random, 0, 1), halfWidth: within(random, 2, 3.5) },
      cortex: { facial: 1, palatal: 1.2 },
      boneClass: 3,
      scallop: within(random, 0, 1.5),
      crestDrop: within(random, 0, 2),
    },
    state: fresh
      ? socket(random, place, crownTilt.faciopalatal, index % 8 === 7 || index % 8 === 2)
      : { kind: 'healed' },
    gap: TABLE[place - 1]![2]! * within(random, 0.92, 1.08),
    mesial: neighbour(random, place === 1 ? 1 : place - 1),
    distal: neighbour(random, place + 1),
    reference: {
      kind: index % 3 === 0 ? 'typed' : 'tooth',
      cej: within(random, 1, 3),
      margin: within(random, 2, 4.5),
    },
    gum: {
      crest: within(random, 1.5, 3.5),
      facial: within(random, 0.6, 1.5),
      palatal: within(random, 1, 3),
      papillaMesial: 4,
      papillaDistal: 4,
    },
    crown: { ...toothNumbers(random, place), tilt: crownTilt },
    canal: {
      behind: within(random, 5, 9),
      below: within(random, 0, 3),
      inclination: within(random, 5, 25),
      length: within(random, 9, 12),
      foramen: within(random, 3, 4.2),
      middle: within(random, 1.8, 2.5),
      nasal: within(random, 2.8, 3.8),
    },
    opposing: { overjet: 2.5, overbite: 3 },
  };
}

/** Shapes of the series; without a neck the platform is as wide as the thread, so that the envelope has no step. */
function randomShape(random: Random): ImplantShape {
  const implantedDiameter = within(random, 2.8, 5);
  const neck = random() < 0.5;
  const scalloped = neck && random() < 0.5;
  const implantedLength = within(random, 8, 13);
  return {
    name: 'oracle',
    implantedLength,
    transmucosalLength: neck ? 1.5 : 0,
    apicalDiameter: implantedDiameter * within(random, 0.5, 1),
    implantedDiameter,
    platformDiameter: neck ? implantedDiameter + within(random, 0, 1) : implantedDiameter,
    taperLength: implantedLength * within(random, 0.2, 0.9),
    thread: { depth: 0.3, pitch: pick(random, [0.6, 0.8, 1]), starts: 1 },
    flutes: { count: 0, length: 0, depth: 0 },
    scallop: scalloped ? within(random, 0.5, 1.5) : 0,
    index: scalloped ? 2 : pick(random, [0, 1, 3, 4, 6]),
    abutment: null,
    maxTorque: 35,
  };
}

/** A pose about the ridge's or the crown's direction: ±1 mm, ±1.5 mm, ±20° and ±12°, kept within the model's ranges. */
function randomPlan(random: Random, site: Site, title: string): Plan {
  const implant = randomShape(random);
  const about = random() < 0.5 ? site.ridge.inclination : site.crown.tilt.faciopalatal;
  const tilt = {
    faciopalatal: Math.min(50, Math.max(-10, about + within(random, -20, 20))),
    mesiodistal: within(random, -12, 12),
  };
  // The shoulder stands up to 1.5 mm above or below its meant level over the entry.
  const up = implant.transmucosalLength + within(random, -1.5, 1.5);
  return {
    format: 'ridgewright-plan',
    version: PLAN_VERSION,
    title,
    note: '',
    site,
    implant,
    fixing: pick(random, ['screw-bone', 'screw-gum', 'cemented'] as const),
    pose: {
      platform: {
        m: within(random, -1, 1) + up * tan(tilt.mesiodistal),
        f: within(random, -1.5, 1.5) + up * tan(tilt.faciopalatal),
        c: up,
      },
      tilt,
      roll: within(random, -180, 180),
    },
    crown: DEFAULT_CROWN,
    crestMargin: 1,
    limits: {},
    rehearsal: null,
  };
}

export interface Series {
  readonly sites: number;
  readonly posesPerSite: number;
  readonly seed: number;
}

export function* randomPlans({ sites, posesPerSite, seed }: Series): Generator<Plan> {
  const random = seeded(seed);
  for (let i = 0; i < sites; i += 1) {
    const site = randomSite(random, i);
    for (let j = 0; j < posesPerSite; j += 1)
      yield randomPlan(random, site, `site ${i} (${site.tooth}), pose ${j}`);
  }
}

// ---------------------------------------------------------------- slabs

export interface SlabNumbers {
  readonly width: number;
  readonly radius: number;
  readonly tilt?: { faciopalatal: number; mesiodistal: number };
  readonly f0?: number;
  readonly m0?: number;
  readonly depth?: number;
  readonly length?: number;
  readonly state?: Site['state'];
  readonly inclination?: number;
}

/** A ridge of constant width on a straight arch with a square crest, and a plain cylinder. */
export function slabPlan(n: SlabNumbers): Plan {
  const half = n.width / 2;
  const entries: WidthEntry[] = [
    { depth: 1, facial: half, palatal: half },
    { depth: 12, facial: half, palatal: half },
  ];
  const tooth = toothNumbers(() => 0.5, 1);
  const upright: Neighbour = {
    ...tooth,
    tilt: { faciopalatal: 0, mesiodistal: 0 },
    rootTilt: { faciopalatal: 0, mesiodistal: 0 },
    boneLevel: 0,
    cejAboveBone: 0,
    ridge: { widths: entries, inclination: n.inclination ?? 0 },
  };
  const tilt = n.tilt ?? { faciopalatal: 0, mesiodistal: 0 };
  const up = -(n.depth ?? 0);
  return {
    format: 'ridgewright-plan',
    version: PLAN_VERSION,
    title: 'slab',
    note: '',
    site: {
      tooth: 11,
      arch: { width: 35, depth: 0 },
      ridge: {
        widths: entries,
        blend: { from: 2, to: 6.5 },
        crestRounding: 0,
        undercut: { depth: 0, level: 5, halfHeight: 3 },
        inclination: n.inclination ?? 0,
        height: 18,
        floor: 'nose',
        eminence: { height: 0, halfWidth: 3 },
        cortex: { facial: 1, palatal: 1 },
        boneClass: 3,
        scallop: 0,
        crestDrop: 0,
      },
      state: n.state ?? { kind: 'healed' },
      gap: 8.5,
      mesial: upright,
      distal: upright,
      reference: { kind: 'tooth', cej: 2, margin: 3 },
      gum: { crest: 2, facial: 1, palatal: 1, papillaMesial: 4, papillaDistal: 4 },
      crown: { ...tooth, tilt: { faciopalatal: 0, mesiodistal: 0 } },
      canal: { behind: 8, below: 0, inclination: 0, length: 10, foramen: 3.6, middle: 2.1, nasal: 3.3 },
      opposing: { overjet: 3, overbite: 3 },
    },
    implant: {
      name: 'cylinder',
      implantedLength: n.length ?? 10,
      transmucosalLength: 0,
      apicalDiameter: 2 * n.radius,
      implantedDiameter: 2 * n.radius,
      platformDiameter: 2 * n.radius,
      taperLength: 1,
      thread: { depth: 0.3, pitch: 0.8, starts: 1 },
      flutes: { count: 0, length: 0, depth: 0 },
      scallop: 0,
      index: 6,
      abutment: null,
      maxTorque: 35,
    },
    fixing: 'screw-bone',
    pose: {
      platform: {
        m: (n.m0 ?? 0) + up * tan(tilt.mesiodistal),
        f: (n.f0 ?? 0) + up * tan(tilt.faciopalatal),
        c: up,
      },
      tilt,
      roll: 0,
    },
    crown: DEFAULT_CROWN,
    crestMargin: 1,
    limits: {},
    rehearsal: null,
  };
}
