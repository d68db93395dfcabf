import type { Site } from '../anatomy/site.ts';
import { GENERIC_KIT } from '../drilling/genericKit.ts';
import type { ToolRef } from '../drilling/kit.ts';
import type { Rehearsal } from '../drilling/rehearsal.ts';
import { apicalCore, type ImplantShape } from '../implant/shape.ts';
import type { Bands } from '../measure/limit.ts';
import { type Fault, fault } from './fault.ts';
import { kitFaults } from './kitFaults.ts';
import type { Plan } from './plan.ts';
import { solidFaults } from './solidFaults.ts';

/** What the schema cannot see: numbers that contradict each other. Empty: the plan can be used. */
export function contradictions(plan: Plan): Fault[] {
  return [
    ...shapeFaults(plan.implant),
    ...limitFaults(plan.limits),
    ...siteFaults(plan.site),
    ...rehearsalFaults(plan.rehearsal),
  ];
}

/** A rehearsal whose own kit contradicts itself, or that names a tool which its kit does not have. */
export function rehearsalFaults(rehearsal: Rehearsal | null): Fault[] {
  if (!rehearsal) return [];
  const kit = rehearsal.kit ?? GENERIC_KIT;
  const wrong = rehearsal.kit ? kitFaults(rehearsal.kit, 'rehearsal.kit') : [];
  const known = ({ kind, index }: ToolRef, path: string): void => {
    const high = (kind === 'drill' ? kit.drills : kit.necks).length - 1;
    if (index > high) wrong.push(fault('out-of-range', `${path}.tool.index`, { value: index, low: 0, high }));
  };
  if (rehearsal.hand) known(rehearsal.hand.tool, 'rehearsal.hand');
  for (const [i, { tool }] of rehearsal.passes.entries()) known(tool, `rehearsal.passes.${i}`);
  return wrong;
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
    // Without a band nothing could be judged, and everything would pass.
    if (!low && !high) out.push(fault('missing', `limits.${key}.low`));
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
  return out.length > 0 ? out : solidFaults(site);
}
