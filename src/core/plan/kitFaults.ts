import type { Drill, Kit, NeckCutter } from '../drilling/kit.ts';
import { LEAST_STEP } from '../drilling/kitRanges.ts';
import { type Fault, fault } from './fault.ts';

/** What the schema cannot see in a kit: numbers that contradict each other. `at`: the kit's own path, '' in a file of its own. */
export function kitFaults(kit: Kit, at = ''): Fault[] {
  const place = at === '' ? '' : `${at}.`;
  const drills = kit.drills.flatMap((drill, i) => [
    ...drillFaults(drill, `${place}drills.${i}`),
    ...rising(drill.diameter, kit.drills[i - 1]?.diameter, (k) => `${place}drills.${k}.diameter`, i),
  ]);
  return [...drills, ...kit.necks.flatMap((neck, i) => neckFaults(neck, `${place}necks.${i}`))];
}

/** A number of a list has to be larger than the one before it. */
function rising(
  value: number,
  before: number | undefined,
  path: (index: number) => string,
  i: number,
): Fault[] {
  if (before === undefined || value >= before + LEAST_STEP - 1e-9) return [];
  return [fault('contradiction', path(i), { value, low: before + LEAST_STEP, allowed: path(i - 1) })];
}

function drillFaults(drill: Drill, place: string): Fault[] {
  const out = drill.marks.flatMap((mark, i) =>
    rising(mark, drill.marks[i - 1], (k) => `${place}.marks.${k}`, i),
  );
  const last = drill.marks.length - 1;
  const deepest = drill.marks[last];
  if (deepest > drill.length)
    out.push(
      fault('contradiction', `${place}.marks.${last}`, {
        value: deepest,
        high: drill.length,
        allowed: `${place}.length`,
      }),
    );
  return [...out, ...speedFaults(drill, place)];
}

function neckFaults(neck: NeckCutter, place: string): Fault[] {
  const out = speedFaults(neck, place);
  if (neck.shoulderDiameter < neck.neckDiameter)
    out.push(
      fault('contradiction', `${place}.shoulderDiameter`, {
        value: neck.shoulderDiameter,
        low: neck.neckDiameter,
        allowed: `${place}.neckDiameter`,
      }),
    );
  return out;
}

function speedFaults({ speed }: Pick<Drill, 'speed'>, place: string): Fault[] {
  if (speed.high >= speed.low) return [];
  return [
    fault('contradiction', `${place}.speed.high`, {
      value: speed.high,
      low: speed.low,
      allowed: `${place}.speed.low`,
    }),
  ];
}
