import { MeshBuilder, type Ring } from '../geometry/loft.ts';
import type { TriangleMesh } from '../geometry/mesh.ts';
import { rad, type Vec3 } from '../geometry/vec.ts';
import { type Drill, type NeckCutter, pointLength } from './kit.ts';

/**
 * Mesh of a tool in its own right-handed frame: `z` along the axis, + coronal; 0 at the bottom of a drill's full diameter or at a neck cutter's notch of the
 * neck. mm. Closed, outward.
 */
export interface ToolMesh {
  readonly body: TriangleMesh;
  /** First triangle of the dark marks; they come last. */
  readonly marksFrom: number;
}

/** One ring of the outline: height, radius, how deep the flutes are cut there (share of the radius), and whether a mark begins here. */
interface Station {
  readonly z: number;
  readonly r: number;
  readonly cut: number;
  readonly mark?: boolean;
}

const COLUMNS = 48;
/** Width of a mark, mm. */
const MARK = 0.35;
/** Turn of the flutes over the length, degrees per mm of height for a diameter of 1 mm: a helix of about 28°. */
const HELIX = 61;
/** Radius and length of the shank in the handpiece, mm. */
const SHANK = { radius: 1.17, length: 9 } as const;

/** Depth of two opposite flutes at an azimuth, 0…1. */
function flute(angle: number): number {
  const c = Math.cos(angle);
  return Math.max(0, c * c * c * c - 0.12) / 0.88;
}

/** Outline of a drill: point, fluted body with its marks, shank. */
function drillStations(drill: Drill): Station[] {
  const r = drill.diameter / 2;
  const y = pointLength(drill);
  const shift = drill.marksCountPoint ? y : 0;
  const marks = drill.marks.map((m) => m - shift).filter((z) => z > 0.2);
  const top = Math.max(drill.length - y - SHANK.length, (marks.at(-1) ?? 10) + 1);
  const heights = Array.from(
    { length: Math.ceil(top / 0.5) + 1 },
    (_, i) => (i * top) / Math.ceil(top / 0.5),
  );
  const body: Station[] = heights
    .filter((z) => marks.every((m) => Math.abs(z - m) > MARK))
    .map((z) => ({ z, r, cut: 0.3 * Math.min(1, (top - z) / 2) }));
  const rings = marks.flatMap((m): Station[] => [
    { z: m - MARK / 2, r, cut: 0.3 * Math.min(1, (top - m) / 2), mark: true },
    { z: m + MARK / 2, r, cut: 0.3 * Math.min(1, (top - m) / 2) },
  ]);
  const shank = Math.min(SHANK.radius, Math.max(r, 0.9));
  return [
    ...[0.25, 0.5, 0.75].map((w) => ({ z: -y * (1 - w), r: w * r, cut: 0.3 })),
    ...[...body, ...rings].sort((a, b) => a.z - b.z),
    { z: top + 0.6, r: shank, cut: 0 },
    { z: top + SHANK.length, r: shank, cut: 0 },
  ];
}

/** Outline of a neck cutter: the frustum with its two notches, stem, shank. */
function neckStations({ neckDiameter, shoulderDiameter, height, length }: NeckCutter): Station[] {
  const [low, high] = [neckDiameter / 2, shoulderDiameter / 2];
  const at = (z: number): number => low + (high - low) * Math.min(1, Math.max(0, z / Math.max(height, 1e-6)));
  const steps = [0, MARK, ...[0.25, 0.5, 0.75].map((w) => w * height), height - MARK / 2];
  const rising = [...new Set(steps.filter((z) => z >= 0 && z < height + MARK))].sort((a, b) => a - b);
  return [
    ...rising.map((z) => ({ z, r: at(z), cut: 0.3, mark: z === 0 })),
    { z: height + MARK / 2, r: high, cut: 0.3, mark: true },
    { z: height + 1.5 * MARK, r: high, cut: 0.3 },
    { z: height + 2, r: high, cut: 0 },
    { z: height + 2.6, r: SHANK.radius, cut: 0 },
    { z: Math.max(length - SHANK.length, height + 4) + SHANK.length, r: SHANK.radius, cut: 0 },
  ];
}

/** The tool as it is drawn: two helical flutes, dark marks, shank. */
export function toolMesh(tool: Drill | NeckCutter): ToolMesh {
  const drill = 'diameter' in tool;
  const stations = drill ? drillStations(tool) : neckStations(tool);
  const lead = rad(HELIX) / (drill ? tool.diameter : tool.shoulderDiameter);
  const builder = new MeshBuilder();
  const rings = stations.map(
    ({ z, r, cut }): Ring =>
      builder.ring(COLUMNS, (j): Vec3 => {
        const angle = (2 * Math.PI * j) / COLUMNS;
        const radius = r * (1 - cut * flute(angle - lead * z));
        return [radius * Math.cos(angle), radius * Math.sin(angle), z];
      }),
  );
  const tip = drill ? -pointLength(tool) : stations[0].z;
  builder.capBelow(rings[0], [0, 0, tip]);
  const marked = (i: number): boolean => stations[i].mark === true;
  for (let i = 0; i + 1 < rings.length; i++) if (!marked(i)) builder.band(rings[i], rings[i + 1]);
  builder.capAbove(rings[rings.length - 1], [0, 0, stations[stations.length - 1].z]);
  const marksFrom = builder.triangleCount;
  for (let i = 0; i + 1 < rings.length; i++) if (marked(i)) builder.band(rings[i], rings[i + 1]);
  return { body: builder.build(), marksFrom };
}
