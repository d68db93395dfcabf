import { Matrix4, PerspectiveCamera, Vector3 } from 'three';
import { describe, expect, it } from 'vitest';
import { sectionOutline } from '../../src/core/anatomy/section.ts';
import { markOf } from '../../src/core/geometry/pose.ts';
import { loopArea } from '../../src/core/geometry/slice.ts';
import { cross, dot, type Vec3 } from '../../src/core/geometry/vec.ts';
import type { Plan } from '../../src/core/plan/plan.ts';
import { dashed } from '../../src/marks/dash.ts';
import { tagWidth } from '../../src/marks/Tag.tsx';
import { cutFaces, sectionPlane } from '../../src/scene/cut.ts';
import { HANDLE, HANDLES, onAxis, PLACES, tiltReach } from '../../src/scene/handles.ts';
import { implantMatrix } from '../../src/scene/Implant.tsx';
import { type Lens, lensOf } from '../../src/scene/lens.ts';
import { silhouette } from '../../src/scene/silhouette.ts';
import { solveAmounts } from '../../src/scene/solve.ts';
import { TAG_SIZE } from '../../src/scene/tagLayout.ts';
import { cameraAt, LENS, standpointOf } from '../../src/scene/views.ts';
import { tagLines } from '../../src/scene/wallTags.ts';
import { evaluationOf } from '../../src/state/evaluation.ts';
import { VIEWS, type View } from '../../src/state/session.ts';
import { SITES_DEMO } from '../support/demoPlans.ts';
import { MEAN_PLANS } from '../support/meanPlans.ts';

const PLANS = [...SITES_DEMO, ...MEAN_PLANS];

function lensFor(plan: Plan, view: View, width = 655, height = 720, inMouth = false): Lens {
  const at = standpointOf(view, plan, evaluationOf(plan).anatomy, inMouth, { width, height });
  const camera = new PerspectiveCamera(LENS.fov, width / height, LENS.near, LENS.far);
  camera.up.set(...at.up);
  camera.position.set(...cameraAt(at));
  camera.lookAt(...at.target);
  camera.updateMatrixWorld();
  camera.updateProjectionMatrix();
  return lensOf(camera, width, height);
}

describe('the lens', () => {
  it('projects as three.js does', () => {
    // Source: three.js, Vector3.project.
    const [{ plan }] = SITES_DEMO;
    const camera = new PerspectiveCamera(20, 1.5, 10, 500);
    camera.position.set(80, 60, 30);
    camera.lookAt(1, 2, 3);
    camera.updateMatrixWorld();
    const lens = lensOf(camera, 600, 400);
    const p = evaluationOf(plan).anatomy.toJaw([1, -2, 4]);
    const v = new Vector3(...p).project(camera);
    expect(lens.at(p).x).toBeCloseTo(((v.x + 1) / 2) * 600, 6);
    expect(lens.at(p).y).toBeCloseTo(((1 - v.y) / 2) * 400, 6);
  });
});

describe('the views', () => {
  it.each(PLANS)('show crowns up, and palatal left of facial in the first, $id', ({ plan }) => {
    const { anatomy } = evaluationOf(plan);
    const lens = lensFor(plan, 'mesial');
    const at = (p: Vec3) => lens.at(anatomy.toJaw(p));
    expect(at([0, 0, 8]).y).toBeLessThan(at([0, 0, -8]).y);
    expect(at([0, -4, 0]).x).toBeLessThan(at([0, 4, 0]).x);
    const mouth = lensFor(plan, 'mesial', 655, 720, true);
    expect(mouth.at(anatomy.toJaw([0, 0, 8])).y).toBeGreaterThan(mouth.at(anatomy.toJaw([0, 0, -8])).y);
  });

  it.each(VIEWS)('%s holds what matters at every shape of the picture', (view) => {
    for (const { plan } of PLANS) {
      const { anatomy, placement } = evaluationOf(plan);
      for (const [width, height] of [
        [655, 720],
        [640, 400],
        [370, 420],
        [1400, 500],
      ]) {
        const lens = lensFor(plan, view, width, height);
        const points: Vec3[] = [
          placement.platform,
          placement.axisPoint(placement.tA),
          anatomy.teeth.mesial.marks.tip,
          anatomy.teeth.distal.marks.tip,
        ];
        for (const p of points) {
          const { x, y } = lens.at(anatomy.toJaw(p));
          expect(x).toBeGreaterThan(0);
          expect(x).toBeLessThan(width);
          expect(y).toBeGreaterThan(0);
          expect(y).toBeLessThan(height);
        }
      }
    }
  });
});

describe('the implant on the stage', () => {
  it.each(PLANS)('stands by a proper rotation, mark and axis where the model has them, $id', ({ plan }) => {
    // Source: rules F2 and F4; a determinant of −1 would turn the right-handed thread into a left-handed one.
    const evaluation = evaluationOf(plan);
    const m = implantMatrix(evaluation, new Matrix4());
    expect(m.determinant()).toBeCloseTo(1, 12);
    const { toJaw, toJawDirection } = evaluation.anatomy;
    const along = (v: Vector3): Vec3 => v.applyMatrix4(m).toArray();
    const off = along(new Vector3(0, 0, 0)).map((v, k) => v - toJaw(evaluation.placement.platform)[k]);
    expect(Math.hypot(...off)).toBeLessThan(1e-9);
    const up = new Vector3(0, 0, 1).transformDirection(m).toArray();
    const mark = new Vector3(1, 0, 0).transformDirection(m).toArray();
    expect(dot(up, toJawDirection(evaluation.placement.a))).toBeCloseTo(1, 9);
    expect(dot(mark, toJawDirection(markOf(plan.pose)))).toBeCloseTo(1, 9);
  });
});

describe('the face of the cut', () => {
  it.each(SITES_DEMO)('fills the section’s outline, $id', ({ plan }) => {
    // Source: the shoelace area of the outline against the sum of the triangles in space.
    const evaluation = evaluationOf(plan);
    const { bone } = cutFaces(evaluation);
    const outline = sectionOutline(evaluation.anatomy, sectionPlane(evaluation)).bone;
    const wanted = Math.abs(outline.reduce((sum, loop) => sum + loopArea(loop), 0));
    let area = 0;
    for (let i = 0; i < bone.index.length; i += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => bone.points[bone.index[i + k]]);
      const u: Vec3 = [b[0] - a[0], b[1] - a[1], b[2] - a[2]];
      const v: Vec3 = [c[0] - a[0], c[1] - a[1], c[2] - a[2]];
      area += Math.hypot(...cross(u, v)) / 2;
    }
    expect(area / wanted).toBeCloseTo(1, 3);
  });
});

describe('the tags', () => {
  it.each(PLANS)(
    'lie over none of each other, at most four of walls, each line between its own points, $id',
    ({ plan }) => {
      const evaluation = evaluationOf(plan);
      for (const view of VIEWS) {
        const lens = lensFor(plan, view);
        const lines = tagLines(evaluation, lens, null, view !== 'mesial', TAG_SIZE.desk);
        expect(lines.filter((l) => l.id.includes('-wall-')).length).toBeLessThanOrEqual(4);
        const boxes = lines.map(({ tag, side, number, mark }) => {
          const width = tagWidth({ number, mark, size: TAG_SIZE.desk });
          const left = side === 'right' ? tag.x : tag.x - width;
          return {
            left,
            right: left + width,
            top: tag.y - TAG_SIZE.desk * 0.75,
            bottom: tag.y + TAG_SIZE.desk * 0.75,
          };
        });
        for (const [i, a] of boxes.entries()) {
          expect(a.left).toBeGreaterThanOrEqual(0);
          expect(a.right).toBeLessThanOrEqual(655);
          for (const b of boxes.slice(i + 1)) {
            const apart = a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
            expect(apart, `${view} ${lines[i].id}`).toBe(true);
          }
        }
        for (const line of lines) {
          const reading = evaluation.readings.find((r) => r.id === line.id);
          expect(line.from).toEqual(lens.at(reading?.from ?? [0, 0, 0]));
          expect(line.to).toEqual(lens.at(reading?.to ?? [0, 0, 0]));
        }
      }
    },
  );

  it('show the reading that is lit, wherever its line runs', () => {
    const [{ plan }] = SITES_DEMO;
    const evaluation = evaluationOf(plan);
    const ids = tagLines(evaluation, lensFor(plan, 'mesial'), 'apex-to-floor', false, TAG_SIZE.desk).map(
      (l) => l.id,
    );
    expect(ids).toContain('apex-to-floor');
  });
});

describe('the handles', () => {
  const [{ plan }] = SITES_DEMO;
  const { anatomy } = evaluationOf(plan);

  it.each(HANDLES)('%s: the hand leads, the grip follows to within a pixel', (id) => {
    const lens = lensFor(plan, 'mesial');
    const handle = HANDLE[id];
    const reach = tiltReach(plan, 'entry');
    const shown = (amounts: readonly number[]) =>
      lens.at(anatomy.toJaw(handle.grip(handle.apply(plan, amounts, 'entry'), 'entry', reach)));
    const amounts = handle.freedoms === 2 ? [0.8, -1.1] : [id === 'turn' ? 12 : 1.3];
    const found = solveAmounts(
      shown,
      amounts.map(() => 0),
      shown(amounts),
      handle.try,
    );
    const [a, b] = [shown(found), shown(amounts)];
    expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(1);
    for (const [k, amount] of amounts.entries()) expect(found[k]).toBeCloseTo(amount, id === 'turn' ? 0 : 1);
  });

  it('shift bars stand apart on the picture, and all handles coronal of the shoulder', () => {
    const lens = lensFor(plan, 'mesial');
    const [f, m, ring] = [PLACES.facialBar, PLACES.mesialBar, PLACES.ring].map((c) =>
      lens.at(anatomy.toJaw(onAxis(plan, c))),
    );
    expect(f.y - m.y).toBeGreaterThan(24);
    expect(m.y - ring.y).toBeGreaterThan(24);
  });

  it('a tilt about the aim point is held beyond the apex, where the arm is long', () => {
    expect(tiltReach(plan, 'entry')).toBeCloseTo(14.9, 9);
    expect(tiltReach(plan, 'aim')).toBeLessThan(-15);
  });
});

describe('ink', () => {
  it('breaks a line into its strokes, as long together as the pattern says', () => {
    // Worked by hand: 100 px of 6 on, 4 off: ten strokes of 6, round the corner as well.
    const path = dashed(
      [
        { x: 0, y: 0 },
        { x: 53, y: 0 },
        { x: 53, y: 47 },
      ],
      [6, 4],
    );
    const strokes = path.split('M').slice(1);
    expect(strokes).toHaveLength(10);
    const length = strokes.map((stroke) => {
      const points = stroke.split('L').map((p) => p.split(' ').map(Number));
      return points
        .slice(1)
        .reduce((sum, p, i) => sum + Math.hypot(p[0] - points[i][0], p[1] - points[i][1]), 0);
    });
    for (const one of length) expect(one).toBeCloseTo(6, 6);
  });

  it('finds the outline of a ball: the circle where normal and view are square', () => {
    // Source: elementary geometry: seen from distance d, a sphere of radius r turns away on the circle at height r²/d.
    const n = 24;
    const positions: number[] = [];
    const triangles: number[] = [];
    for (let i = 0; i <= n; i++)
      for (let j = 0; j < 2 * n; j++) {
        const [t, p] = [(Math.PI * i) / n, (Math.PI * j) / n];
        positions.push(Math.sin(t) * Math.cos(p), Math.sin(t) * Math.sin(p), Math.cos(t));
      }
    for (let i = 0; i < n; i++)
      for (let j = 0; j < 2 * n; j++) {
        const at = (a: number, b: number) => a * 2 * n + (b % (2 * n));
        triangles.push(at(i, j), at(i + 1, j), at(i + 1, j + 1), at(i, j), at(i + 1, j + 1), at(i, j + 1));
      }
    const points = new Float64Array(positions);
    const mesh = { positions: points, normals: points, triangles: new Uint32Array(triangles) };
    const [outline] = silhouette(mesh, [0, 0, 4]);
    expect(outline.closed).toBe(true);
    for (const [, , z] of outline.points) expect(z).toBeCloseTo(0.25, 1);
  });
});
