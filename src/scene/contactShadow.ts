import { CanvasTexture, MeshBasicMaterial, type Plane, PlaneGeometry, SRGBColorSpace, Vector4 } from 'three';
import type { Anatomy } from '../core/anatomy/anatomy.ts';
import { shownRange } from '../core/anatomy/section.ts';

/** Paper round the cast's foot that the shade may reach, mm, and the texture's fineness, pixels a millimetre. */
const MARGIN = 9;
const FINE = 4;

/** Shades under the cast: how far they are blurred and how far they lie from the key's side, mm, and how dark they are. */
const SHADES = [
  { blur: 6, away: 4.5, dark: 0.62 },
  { blur: 2, away: 0.6, dark: 0.55 },
] as const;

/** The way the key's light falls over the paper, jaw frame. */
const FALL = [-0.51, -0.86] as const;

type Point = readonly [number, number];

/** The foot of the cast on the paper, jaw frame. */
export function footprint(anatomy: Anatomy): Point[] {
  const { ridge, toJaw } = anatomy;
  const { from, to } = shownRange(anatomy);
  const steps = 28;
  const side = (sign: 1 | -1): Point[] =>
    Array.from({ length: steps + 1 }, (_, i) => {
      const q = from + ((to - from) * i) / steps;
      const depth = (ridge.crest(q) - ridge.floor) / ridge.cos;
      const [x, y] = toJaw(ridge.sectionPoint(q, sign * ridge.half(sign, q, depth), depth));
      return [x, y];
    });
  return [...side(1), ...side(-1).reverse()];
}

/** Draws the foot's shade, blurred, on a canvas that covers `width` × `height` mm from the corner `left`, `back`. */
function shade(
  foot: readonly Point[],
  left: number,
  back: number,
  width: number,
  height: number,
): CanvasTexture {
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(width * FINE);
  canvas.height = Math.ceil(height * FINE);
  const pen = canvas.getContext('2d');
  if (pen) {
    // Only the shadow of what is drawn falls on the canvas: the foot itself is drawn beside it.
    const beside = 2 * canvas.width;
    for (const { blur, away, dark } of SHADES) {
      pen.shadowColor = `rgb(70 56 38 / ${dark})`;
      pen.shadowBlur = blur * FINE;
      pen.shadowOffsetX = beside + away * FALL[0] * FINE;
      pen.shadowOffsetY = -away * FALL[1] * FINE;
      pen.beginPath();
      for (const [x, y] of foot) pen.lineTo((x - left) * FINE - beside, (back + height - y) * FINE);
      pen.fill();
    }
  }
  const texture = new CanvasTexture(canvas);
  texture.colorSpace = SRGBColorSpace;
  return texture;
}

/** A soft shade on the paper under the cast, drawn once for a site: what the light setting has in place of a cast shadow. */
export class ContactShadow {
  readonly sheet: PlaneGeometry;
  readonly material: MeshBasicMaterial;
  /** Middle of the sheet, jaw frame. */
  readonly middle: Point;
  private readonly map: CanvasTexture;

  /** `keep` is the plane of the cut: beyond it, where nothing stands, the shade fades. */
  constructor(anatomy: Anatomy, keep: Plane | null) {
    const foot = footprint(anatomy);
    const [xs, ys] = [foot.map((p) => p[0]), foot.map((p) => p[1])];
    const left = Math.min(...xs) - MARGIN;
    const back = Math.min(...ys) - MARGIN;
    const width = Math.max(...xs) + MARGIN - left;
    const height = Math.max(...ys) + MARGIN - back;
    this.middle = [left + width / 2, back + height / 2];
    this.sheet = new PlaneGeometry(width, height);
    this.map = shade(foot, left, back, width, height);
    this.material = new MeshBasicMaterial({ map: this.map, transparent: true, depthWrite: false });
    if (keep) fadeBeyond(this.material, keep);
  }

  dispose(): void {
    this.sheet.dispose();
    this.material.dispose();
    this.map.dispose();
  }
}

/** Fades a material over a few millimetres beyond a plane that may move. */
function fadeBeyond(material: MeshBasicMaterial, keep: Plane): void {
  const plane = new Vector4();
  material.onBeforeCompile = (shader) => {
    shader.uniforms.uKeep = { value: plane };
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying float vKept;\nuniform vec4 uKeep;')
      .replace(
        '#include <begin_vertex>',
        '#include <begin_vertex>\nvKept = dot(uKeep, modelMatrix * vec4(position, 1.0));',
      );
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', '#include <common>\nvarying float vKept;')
      .replace(
        '#include <color_fragment>',
        '#include <color_fragment>\ndiffuseColor.a *= smoothstep(-3.0, 1.0, vKept);',
      );
  };
  material.onBeforeRender = () => plane.set(keep.normal.x, keep.normal.y, keep.normal.z, keep.constant);
}
