import {
  BufferAttribute,
  BufferGeometry,
  DoubleSide,
  Mesh,
  MeshBasicMaterial,
  type Plane,
  Vector4,
} from 'three';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { shownRange } from '../core/anatomy/section.ts';
import { clamp } from '../core/geometry/vec.ts';

/** Columns round the foot's edge, how far outside it, mm, with the darkness there: a narrow shade on a wide one. */
const EDGE = [
  [-2.5, 0.66],
  [-0.8, 0.56],
  [0, 0.44],
  [0.8, 0.32],
  [2, 0.2],
  [3.6, 0.1],
  [5.4, 0.035],
  [7.5, 0],
] as const;

/** Where the shade lies from the foot, jaw frame, mm: away from the key. */
const FALL = [-1, -1.7] as const;
const COLOUR = [0.062, 0.04, 0.019] as const;

/** Rows along the arch between the two ends. */
const ROWS = 24;
const ACROSS = 2 * EDGE.length;
const ALONG = ROWS + 2 * EDGE.length;

/** Place and darkness of the columns over a stretch from `from` to `to`, with `between` more inside. */
function columns(from: number, to: number, between: number): { at: number; dark: number }[] {
  const inside = (x: number) => (x < 0 ? Math.max(x, (from - to) / 2) : x);
  const low = EDGE.map(([out, dark]) => ({ at: from - inside(out), dark })).reverse();
  const high = EDGE.map(([out, dark]) => ({ at: to + inside(out), dark }));
  const [first, last] = [low[low.length - 1].at, high[0].at];
  const middle = Array.from({ length: between }, (_, i) => ({
    at: first + ((last - first) * (i + 1)) / (between + 1),
    dark: EDGE[0][1],
  }));
  return [...low, ...middle, ...high];
}

/** Two triangles a cell of the grid; on one side of the arch they are seen from below, so the material has two sides. */
function cells(): number[] {
  const index: number[] = [];
  for (let i = 0; i + 1 < ALONG; i++)
    for (let j = 0; j + 1 < ACROSS; j++) {
      const a = i * ACROSS + j;
      const b = a + ACROSS;
      index.push(a, b, b + 1, a, b + 1, a + 1);
    }
  return index;
}

/**
 * A soft shade on the paper under the cast, laid for a site: what the light setting has in place of a cast shadow. Its darkness is worked out at
 * the vertices of a grid round the cast's foot; beyond the plane of the cut, where nothing stands, it fades.
 */
export class ContactShadow {
  readonly mesh: Mesh<BufferGeometry, MeshBasicMaterial>;
  private readonly plane = new Vector4(0, 0, 0, 1);

  constructor() {
    const geometry = new BufferGeometry();
    geometry.setAttribute('position', new BufferAttribute(new Float32Array(3 * ALONG * ACROSS), 3));
    geometry.setAttribute('color', new BufferAttribute(new Float32Array(4 * ALONG * ACROSS), 4));
    geometry.setIndex(cells());
    const material = new MeshBasicMaterial({
      vertexColors: true,
      transparent: true,
      depthWrite: false,
      side: DoubleSide,
      forceSinglePass: true,
    });
    this.mesh = new Mesh(geometry, fadedBeyond(material, this.plane));
    this.mesh.renderOrder = -1;
    this.mesh.frustumCulled = false;
  }

  /** Lays the shade under a site's cast on the paper at level `floor`, jaw frame. */
  lay(anatomy: Anatomy, floor: number): void {
    const { ridge, toJaw } = anatomy;
    const { from, to } = shownRange(anatomy);
    const place = this.mesh.geometry.getAttribute('position');
    const colour = this.mesh.geometry.getAttribute('color');
    columns(from, to, ROWS).forEach((row, i) => {
      const q = clamp(row.at, from, to);
      const depth = (ridge.crest(q) - ridge.floor) / ridge.cos;
      columns(-ridge.half(-1, q, depth), ridge.half(1, q, depth), 0).forEach(({ at, dark }, j) => {
        const [x, y] = toJaw(ridge.sectionPoint(row.at, at, depth));
        place.setXYZ(i * ACROSS + j, x + FALL[0], y + FALL[1], floor - 0.04);
        colour.setXYZW(i * ACROSS + j, ...COLOUR, (dark * row.dark) / EDGE[0][1]);
      });
    });
    place.needsUpdate = true;
    colour.needsUpdate = true;
  }

  /** `keep` is the plane of the cut, which may move from frame to frame; null: the whole cast stands. */
  fade(keep: Plane | null): void {
    this.mesh.onBeforeRender = () => {
      if (keep) this.plane.set(keep.normal.x, keep.normal.y, keep.normal.z, keep.constant);
      else this.plane.set(0, 0, 0, 1);
    };
  }

  dispose(): void {
    this.mesh.geometry.dispose();
    this.mesh.material.dispose();
  }
}

/** Fades a material over a few millimetres beyond a plane that may move. */
function fadedBeyond(material: MeshBasicMaterial, plane: Vector4): MeshBasicMaterial {
  material.onBeforeCompile = (shader) => {
    shader.uniforms.uKeep = { value: plane };
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nuniform vec4 uKeep;')
      .replace(
        '#include <begin_vertex>',
        '#include <begin_vertex>\nvColor.a *= smoothstep(-3.0, 1.0, dot(uKeep, modelMatrix * vec4(position, 1.0)));',
      );
  };
  return material;
}
