import {
  BackSide,
  CanvasTexture,
  DoubleSide,
  type Material,
  MeshBasicMaterial,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  RepeatWrapping,
  SRGBColorSpace,
  Vector2,
} from 'three';
import type { Cut } from './cut.ts';

export const INK = '#1e2430';

/** Everything the model is made of. The planes are shared and move with the implant's axis. */
export interface Materials {
  readonly bone: MeshStandardMaterial;
  readonly wholeBone: MeshStandardMaterial;
  readonly veiledBone: MeshStandardMaterial;
  /** The half that is taken away. */
  readonly ghostBone: MeshStandardMaterial;
  readonly porcelain: MeshStandardMaterial;
  readonly root: MeshStandardMaterial;
  readonly ghostRoot: MeshStandardMaterial;
  readonly gum: MeshStandardMaterial;
  readonly wholeGum: MeshStandardMaterial;
  readonly steel: MeshStandardMaterial;
  readonly mark: MeshBasicMaterial;
  readonly cortex: MeshBasicMaterial;
  readonly marrow: MeshBasicMaterial;
  readonly gumCut: MeshBasicMaterial;
  readonly planned: MeshStandardMaterial;
  /** Ink edges: the solid's back, a little larger; one whole, one cut like the bone. */
  readonly hull: MeshBasicMaterial;
  readonly cutHull: MeshBasicMaterial;
  readonly dispose: () => void;
}

/** Width of the visible edge, mm of the model. */
const HULL = 0.07;

/** Turns a material into a hull: every vertex moved outward along its normal. */
function asHull(material: MeshBasicMaterial): MeshBasicMaterial {
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = shader.vertexShader.replace(
      '#include <begin_vertex>',
      `vec3 transformed = position + normal * ${HULL};`,
    );
  };
  return material;
}

/** The implant's outline in the plane of the cut: heights over the entry and radii, coronal first; mm. */
export type Body = readonly [Vector2, Vector2, Vector2, Vector2, Vector2, Vector2];

export const newBody = (): Body => [
  new Vector2(),
  new Vector2(),
  new Vector2(),
  new Vector2(),
  new Vector2(),
  new Vector2(),
];

/** Leaves the face of the cut open where the implant stands in it; the face's `uv` are the plane's own coordinates. */
function around(material: MeshBasicMaterial, body: Body): MeshBasicMaterial {
  material.onBeforeCompile = (shader) => {
    shader.uniforms.uBody = { value: body };
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec2 vPlane;')
      .replace('#include <begin_vertex>', '#include <begin_vertex>\nvPlane = uv;');
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', '#include <common>\nvarying vec2 vPlane;\nuniform vec2 uBody[6];')
      .replace(
        '#include <clipping_planes_fragment>',
        `#include <clipping_planes_fragment>
        for (int i = 0; i < 5; i++) {
          vec2 a = uBody[i];
          vec2 b = uBody[i + 1];
          if (vPlane.y > a.x || vPlane.y <= b.x) continue;
          if (abs(vPlane.x) < mix(a.y, b.y, (a.x - vPlane.y) / max(a.x - b.x, 1e-6))) discard;
        }`,
      );
  };
  return material;
}

/** A tile of paper with strokes on it, repeated over the cut face; `draw` works on a square of `size` px. */
function tile(ground: string, draw: (pen: CanvasRenderingContext2D, size: number) => void): CanvasTexture {
  const size = 256;
  const canvas = document.createElement('canvas');
  canvas.width = size;
  canvas.height = size;
  const pen = canvas.getContext('2d');
  if (pen) {
    pen.fillStyle = ground;
    pen.fillRect(0, 0, size, size);
    draw(pen, size);
  }
  const texture = new CanvasTexture(canvas);
  texture.wrapS = RepeatWrapping;
  texture.wrapT = RepeatWrapping;
  texture.colorSpace = SRGBColorSpace;
  texture.anisotropy = 8;
  return texture;
}

/** Hatching at 45°, two strokes a tile, joined over its edges. */
const hatching = () =>
  tile('#f1eadb', (pen, size) => {
    pen.strokeStyle = '#8d7a5c';
    pen.lineWidth = 15;
    for (let k = -2; k <= 4; k++) {
      pen.beginPath();
      pen.moveTo((k * size) / 2 - 20, -20);
      pen.lineTo((k * size) / 2 + size + 20, size + 20);
      pen.stroke();
    }
  });

/** Dots for spongy bone, scattered by a fixed list so that every visit draws the same. */
const dots = () =>
  tile('#f6f0e3', (pen, size) => {
    pen.fillStyle = '#b3a384';
    const places = [
      0.07, 0.13, 0.42, 0.05, 0.78, 0.22, 0.25, 0.38, 0.6, 0.44, 0.9, 0.6, 0.12, 0.68, 0.46, 0.75, 0.75, 0.88,
      0.33, 0.95,
    ];
    for (let i = 0; i < places.length; i += 2) {
      pen.beginPath();
      pen.arc(places[i] * size, places[i + 1] * size, i % 4 === 0 ? 7 : 5, 0, 2 * Math.PI);
      pen.fill();
    }
  });

/** mm of cut face a tile of hatching and one of dots cover. */
const HATCH_TILE = 1.9;
const DOT_TILE = 3.2;

/** The materials of the stage, bone and gum cut by the planes of the cut. In the light setting porcelain has no clear coat. */
export function materials({ keep, drop, ends }: Cut, body: Body, light: boolean): Materials {
  const plaster = { color: '#e6ddcb', roughness: 0.95, metalness: 0 };
  const hatch = hatching();
  const spongy = dots();
  hatch.repeat.set(1 / HATCH_TILE, 1 / HATCH_TILE);
  spongy.repeat.set(1 / DOT_TILE, 1 / DOT_TILE);
  const glaze = { vertexColors: true, roughness: 0.36, metalness: 0 };
  const gum = { color: '#cf9a90', roughness: 0.55, transparent: true, opacity: 0.6, depthWrite: false };
  const sheet = { side: DoubleSide, polygonOffset: true };
  const made = {
    bone: new MeshStandardMaterial({ ...plaster, clippingPlanes: [keep], clipShadows: true }),
    wholeBone: new MeshStandardMaterial(plaster),
    veiledBone: new MeshStandardMaterial({ ...plaster, transparent: true, opacity: 0.38, depthWrite: false }),
    ghostBone: new MeshStandardMaterial({
      ...plaster,
      transparent: true,
      opacity: 0.16,
      depthWrite: false,
      clippingPlanes: [drop, ...ends],
    }),
    porcelain: light
      ? new MeshStandardMaterial(glaze)
      : new MeshPhysicalMaterial({ ...glaze, clearcoat: 0.35, clearcoatRoughness: 0.25 }),
    root: new MeshStandardMaterial({ color: '#dcc79c', roughness: 0.8 }),
    ghostRoot: new MeshStandardMaterial({
      color: '#dcc79c',
      roughness: 0.8,
      transparent: true,
      opacity: 0.55,
    }),
    gum: new MeshStandardMaterial({ ...gum, clippingPlanes: [keep] }),
    wholeGum: new MeshStandardMaterial(gum),
    steel: new MeshStandardMaterial({
      color: '#565c66',
      metalness: 0.92,
      roughness: 0.34,
      envMapIntensity: 2.6,
    }),
    mark: new MeshBasicMaterial({ color: '#f6f2e9' }),
    cortex: around(
      new MeshBasicMaterial({ ...sheet, map: hatch, polygonOffsetFactor: -1, polygonOffsetUnits: -2 }),
      body,
    ),
    marrow: around(
      new MeshBasicMaterial({ ...sheet, map: spongy, polygonOffsetFactor: -2, polygonOffsetUnits: -4 }),
      body,
    ),
    gumCut: around(new MeshBasicMaterial({ ...sheet, color: '#e6bfb6' }), body),
    planned: new MeshStandardMaterial({
      ...glaze,
      vertexColors: true,
      transparent: true,
      opacity: 0.4,
      depthWrite: false,
    }),
    hull: asHull(new MeshBasicMaterial({ color: INK, side: BackSide })),
    cutHull: asHull(new MeshBasicMaterial({ color: INK, side: BackSide, clippingPlanes: [keep] })),
  };
  const all: Material[] = Object.values(made);
  return {
    ...made,
    dispose: () => {
      for (const material of all) material.dispose();
      hatch.dispose();
      spongy.dispose();
    },
  };
}
