import { type Anatomy, anatomyOf } from '../anatomy/anatomy.ts';
import type { Site } from '../anatomy/site.ts';
import { apicalCore, type ImplantShape } from '../implant/shape.ts';
import type { Bands } from '../measure/limit.ts';
import { type Fault, fault } from './fault.ts';
import type { Plan } from './plan.ts';

/** Least half-width of the ridge anywhere in the model, mm: less and its section would cross itself. */
export const LEAST_HALF_WIDTH = 0.5;
/** Least stretch of the arch's coordinates, `1 − |e|/R`: less and they fold. */
export const LEAST_STRETCH = 0.25;
/** How far past the neighbours' stations the ridge is modelled, mm. */
export const RIDGE_BEYOND = 6;

/** What the schema cannot see: numbers that contradict each other. Empty: the plan can be used. */
export function contradictions(plan: Plan): Fault[] {
  return [...shapeFaults(plan.implant), ...limitFaults(plan.limits), ...siteFaults(plan.site)];
}

function shapeFaults(s: ImplantShape): Fault[] {
  const out: Fault[] = [];
  const most = (field: string, value: number, high: number, other: string) => {
    if (value > high + 1e-9)
      out.push(fault('contradiction', `implant.${field}`, { value, high, allowed: other }));
  };
  most('apicalDiameter', s.apicalDiameter, s.implantedDiameter, 'implant.implantedDiameter');
  most('taperLength', s.taperLength, s.implantedLength, 'implant.implantedLength');
  most('thread.depth', s.thread.depth, 0.9 * (s.apicalDiameter / 2), 'implant.apicalDiameter');
  if (s.flutes.count > 0) {
    most('flutes.length', s.flutes.length, s.implantedLength, 'implant.implantedLength');
    most('flutes.depth', s.flutes.depth, 0.9 * apicalCore(s), 'implant.apicalDiameter');
  }
  if (s.taperLength === 0)
    most('implantedDiameter', s.implantedDiameter, s.apicalDiameter, 'implant.apicalDiameter');
  if (s.transmucosalLength === 0 && Math.abs(s.platformDiameter - s.implantedDiameter) > 1e-9) {
    const v = s.implantedDiameter;
    out.push(
      fault('contradiction', 'implant.platformDiameter', {
        value: s.platformDiameter,
        low: v,
        high: v,
        allowed: 'implant.transmucosalLength',
      }),
    );
  }
  if (s.scallop > 0 && s.index !== 1 && s.index !== 2) {
    out.push(
      fault('contradiction', 'implant.index', {
        value: s.index,
        low: 1,
        high: 2,
        allowed: 'implant.scallop',
      }),
    );
  }
  return out;
}

function limitFaults(limits: Readonly<Record<string, Bands>>): Fault[] {
  const out: Fault[] = [];
  for (const [key, { low, high }] of Object.entries(limits)) {
    if (low && low.beyond > low.near) {
      out.push(fault('contradiction', `limits.${key}.low.beyond`, { value: low.beyond, high: low.near }));
    }
    if (high && high.beyond < high.near) {
      out.push(fault('contradiction', `limits.${key}.high.beyond`, { value: high.beyond, low: high.near }));
    }
    if (low && high && high.near < low.near) {
      out.push(fault('contradiction', `limits.${key}.high.near`, { value: high.near, low: low.near }));
    }
  }
  return out;
}

/** Contradictions among a site's numbers; the geometric ones are looked for over the whole modelled ridge. */
export function siteFaults(site: Site): Fault[] {
  const out: Fault[] = [];
  const { ridge, state } = site;
  for (const [place, list] of [
    ['ridge', ridge.widths],
    ['mesial.ridge', site.mesial.ridge.widths],
    ['distal.ridge', site.distal.ridge.widths],
  ] as const) {
    list.forEach((w, i) => {
      const before = list[i - 1];
      if (before && w.depth <= before.depth) {
        const field = `site.${place}.widths.${i}.depth`;
        out.push(fault('depths-not-rising', field, { value: w.depth, low: before.depth }));
      }
    });
  }
  if (ridge.blend.to < ridge.blend.from + 0.5) {
    out.push(
      fault('contradiction', 'site.ridge.blend.to', { value: ridge.blend.to, low: ridge.blend.from + 0.5 }),
    );
  }
  if (state.kind === 'socket' && state.parallel > state.depth - 1) {
    out.push(fault('contradiction', 'site.state.parallel', { value: state.parallel, high: state.depth - 1 }));
  }
  return out.length > 0 ? out : surfaceFaults(site);
}

function surfaceFaults(site: Site): Fault[] {
  const { depth, width } = site.arch;
  const radius = depth === 0 ? Infinity : (width * width) / (8 * depth) + depth / 2;
  const { ridge, teeth }: Anatomy = anatomyOf(site);
  const from = teeth.distal.station - RIDGE_BEYOND;
  const to = teeth.mesial.station + RIDGE_BEYOND;
  let thin = { value: Infinity, side: 'facial', d: 0 };
  let palatal = 0;
  for (let d = 0; d <= site.ridge.height; d += 0.25) {
    for (let q = from; q <= to; q += 0.5) {
      for (const side of [1, -1] as const) {
        const w = ridge.half(side, q, d);
        if (w < thin.value) thin = { value: w, side: side > 0 ? 'facial' : 'palatal', d };
        const [e, c] = ridge.acrossPoint(q, side * w * ridge.cap(d), d);
        if (c >= ridge.floor) palatal = Math.max(palatal, -e);
      }
    }
  }
  if (thin.value < LEAST_HALF_WIDTH) {
    const field = `site.ridge.widths.${thin.side}`;
    return [
      fault('ridge-too-thin', field, { value: thin.value, low: LEAST_HALF_WIDTH, allowed: `${thin.d}` }),
    ];
  }
  if (1 - palatal / radius < LEAST_STRETCH || depth > width / 2) {
    // The deepest arch whose radius still holds, R = reach / (1 − least); no more than a half-circle. Rounded down, so that what is named holds.
    const least = palatal / (1 - LEAST_STRETCH);
    const deepest = least < width / 2 ? width / 2 : least - Math.sqrt(least * least - (width * width) / 4);
    const high = Math.floor(10 * deepest) / 10;
    return [fault('arch-too-tight', 'site.arch.depth', { value: depth, low: 0, high })];
  }
  return [];
}
