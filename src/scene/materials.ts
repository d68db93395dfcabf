import {
  BackSide,
  DoubleSide,
  type Material,
  MeshBasicMaterial,
  type MeshBasicMaterialParameters,
  MeshLambertMaterial,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  Vector2,
} from 'three';
import type { Cut } from './cut.ts';
import { asHull, litInVertices } from './shaders.ts';
import { dots, hatching, takenOff } from './tiles.ts';

export const INK = '#1e2430';

/** Everything the model is made of. The planes are shared and move with the implant's axis. */
export interface Materials {
  readonly bone: Material;
  readonly wholeBone: Material;
  readonly veiledBone: Material;
  /** The half that is taken away. */
  readonly ghostBone: Material;
  readonly porcelain: Material;
  /** A crown that stands before what is looked at. */
  readonly veiledCrown: Material;
  readonly root: Material;
  readonly ghostRoot: Material;
  readonly gum: Material;
  readonly wholeGum: Material;
  /** The implant's threads, sandblasted; and its neck. */
  readonly steel: Material;
  readonly polished: Material;
  /** Those that mirror what stands round the model; none in the light setting. */
  readonly mirrors: readonly MeshStandardMaterial[];
  readonly mark: Material;
  readonly cortex: Material;
  readonly marrow: Material;
  readonly gumCut: Material;
  /** The canal: cut open, and as a tube in the bone. */
  readonly hollow: Material;
  readonly canal: Material;
  readonly planned: Material;
  /** The planned crown cut open with the bone: seen through, or solid; and the face of that cut. */
  readonly cutPlanned: Material;
  readonly cutPorcelain: Material;
  readonly crownFace: Material;
  readonly solidCrownFace: Material;
  /** What is to be ground off an abutment. */
  readonly wedge: Material;
  /** Ink edges: the solid's back, a little larger; one whole, one cut like the bone. */
  readonly hull: Material;
  readonly cutHull: Material;
  readonly dispose: () => void;
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

/** The materials of the stage, bone and gum cut by the planes of the cut. The light setting works the light out at the vertices. */
export function materials({ keep, drop, ends }: Cut, body: Body, light: boolean): Materials {
  const matt = (options: MeshBasicMaterialParameters): Material =>
    light
      ? litInVertices(new MeshBasicMaterial(options), 0, 1)
      : new MeshLambertMaterial({ ...options, clipShadows: true });
  const plaster = { color: '#e6ddcb' };
  const gum = { vertexColors: true, transparent: true, opacity: 0.8 };
  const root = { color: '#e4d9c0' };
  const glaze = {
    vertexColors: true,
    roughness: 0.36,
    metalness: 0,
    clearcoat: 0.35,
    clearcoatRoughness: 0.25,
  };
  const blasted = { color: '#4a505a', metalness: 0.9, roughness: 0.44, envMapIntensity: 1.25 };
  const mirror = { color: '#7c838e', metalness: 0.96, roughness: 0.22, envMapIntensity: 1.25 };
  const sheet = { side: DoubleSide, polygonOffset: true };
  const near = (factor: number) => ({ polygonOffsetFactor: -factor, polygonOffsetUnits: -2 * factor });
  const hatch = hatching();
  const spongy = dots();
  const toGrind = takenOff();
  const seenThrough = { vertexColors: true, transparent: true, opacity: 0.4, depthWrite: false };
  const made = {
    bone: matt({ ...plaster, clippingPlanes: [keep] }),
    wholeBone: matt(plaster),
    veiledBone: matt({ ...plaster, transparent: true, opacity: 0.38, depthWrite: false }),
    ghostBone: matt({
      ...plaster,
      transparent: true,
      opacity: 0.16,
      depthWrite: false,
      clippingPlanes: [drop, ...ends],
    }),
    porcelain: light
      ? litInVertices(new MeshBasicMaterial({ vertexColors: true }), 0.22, 34)
      : new MeshPhysicalMaterial(glaze),
    veiledCrown: matt({ ...seenThrough, opacity: 0.16 }),
    root: matt(root),
    ghostRoot: matt({ ...root, transparent: true, opacity: 0.55 }),
    gum: matt({ ...gum, clippingPlanes: [keep] }),
    wholeGum: matt(gum),
    steel: light
      ? litInVertices(new MeshBasicMaterial({ color: '#3a404a' }), 0.25, 14, 0.24)
      : new MeshStandardMaterial(blasted),
    polished: light
      ? litInVertices(new MeshBasicMaterial({ color: '#636a77' }), 0.7, 40, 0.9)
      : new MeshStandardMaterial(mirror),
    mark: new MeshBasicMaterial({ color: '#12151b' }),
    cortex: around(new MeshBasicMaterial({ ...sheet, map: hatch, ...near(1) }), body),
    marrow: around(new MeshBasicMaterial({ ...sheet, map: spongy, ...near(2) }), body),
    gumCut: around(new MeshBasicMaterial({ ...sheet, color: '#e6bfb6' }), body),
    hollow: new MeshBasicMaterial({ ...sheet, color: '#cdc3ae', ...near(3) }),
    canal: matt({ color: '#8c5a53', transparent: true, opacity: 0.35, depthWrite: false }),
    planned: matt(seenThrough),
    cutPlanned: matt({ ...seenThrough, clippingPlanes: [keep] }),
    cutPorcelain: light
      ? litInVertices(new MeshBasicMaterial({ vertexColors: true, clippingPlanes: [keep] }), 0.22, 34)
      : new MeshPhysicalMaterial({ ...glaze, clippingPlanes: [keep] }),
    crownFace: around(
      new MeshBasicMaterial({ ...sheet, color: '#fbf8f1', transparent: true, opacity: 0.72 }),
      body,
    ),
    solidCrownFace: around(new MeshBasicMaterial({ ...sheet, color: '#f3efe6' }), body),
    wedge: new MeshBasicMaterial({
      map: toGrind,
      transparent: true,
      depthWrite: false,
      side: DoubleSide,
      polygonOffset: true,
      polygonOffsetFactor: 2,
      polygonOffsetUnits: 4,
    }),
    hull: asHull(new MeshBasicMaterial({ color: INK, side: BackSide })),
    cutHull: asHull(new MeshBasicMaterial({ color: INK, side: BackSide, clippingPlanes: [keep] })),
  };
  const all: Material[] = Object.values(made);
  return {
    ...made,
    mirrors: [made.steel, made.polished].filter((m) => m instanceof MeshStandardMaterial),
    dispose: () => {
      for (const material of all) material.dispose();
      hatch.dispose();
      spongy.dispose();
      toGrind.dispose();
    },
  };
}
