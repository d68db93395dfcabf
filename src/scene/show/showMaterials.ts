import {
  BackSide,
  Color,
  type Material,
  MeshBasicMaterial,
  type MeshBasicMaterialParameters,
  MeshLambertMaterial,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
} from 'three';
import { INK } from '../materials.ts';
import { asHull, litInVertices } from '../shaders.ts';

/** An amount that a material reads at every frame. */
export interface Amount {
  value: number;
}

/** Everything the patient's drawing is made of. */
export interface ShowMaterials {
  readonly bone: Material;
  readonly gum: Material;
  readonly porcelain: Material;
  readonly root: Material;
  readonly steel: Material;
  readonly polished: Material;
  readonly mark: Material;
  readonly crown: Material;
  readonly bite: Material;
  /** What joins crown and implant. */
  readonly collar: Material;
  readonly hull: Material;
  readonly crownHull: Material;
  readonly biteHull: Material;
  readonly boneHull: Material;
  readonly mirrors: readonly MeshStandardMaterial[];
  readonly boneVeil: Amount;
  readonly gumVeil: Amount;
  /** Bone in its own colour (1), or in the gum's (0), so that gum runs on over it. */
  readonly tintBone: (share: number) => void;
  readonly dispose: () => void;
}

/** How opaque a veiled shell is where it faces the eye, and where it turns away. */
interface Shell {
  readonly clear: number;
  readonly rim: number;
}

/**
 * Lets a material turn into a clear shell by `veil`: nearly nothing where it faces the eye, its own colour where it turns away, so that a
 * thing keeps its shape while one looks into it.
 */
function veiled<M extends Material>(material: M, veil: Amount, { clear, rim }: Shell): M {
  const before = material.onBeforeCompile.bind(material);
  const key = material.customProgramCacheKey();
  material.customProgramCacheKey = () => `${key} veiled ${clear} ${rim}`;
  material.onBeforeCompile = (shader, gl) => {
    before(shader, gl);
    shader.uniforms.uVeil = veil;
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec3 vOut;\nvarying vec3 vEye;')
      .replace(
        '#include <project_vertex>',
        `#include <project_vertex>
        vOut = normalMatrix * normal;
        vEye = -mvPosition.xyz;`,
      );
    shader.fragmentShader = shader.fragmentShader
      .replace(
        '#include <common>',
        '#include <common>\nvarying vec3 vOut;\nvarying vec3 vEye;\nuniform float uVeil;',
      )
      .replace(
        '#include <opaque_fragment>',
        `#include <opaque_fragment>
        float turned = 1.0 - abs(dot(normalize(vOut), normalize(vEye)));
        gl_FragColor.a *= mix(1.0, ${clear} + ${rim - clear} * pow(turned, 2.4), uVeil);`,
      );
  };
  return material;
}

/** The gum's colour where it runs out, linear; bone that is looked into is darker than the paper, or it would not be seen. */
const MUCOSA = new Color(0.62, 0.27, 0.25);
const PLASTER = new Color('#d8c8a4');

const GLAZE = {
  vertexColors: true,
  roughness: 0.36,
  metalness: 0,
  clearcoat: 0.35,
  clearcoatRoughness: 0.25,
};

/** The materials of the drawing; the light setting works the light out at the vertices. */
export function showMaterials(light: boolean): ShowMaterials {
  const boneVeil: Amount = { value: 0 };
  const gumVeil: Amount = { value: 0 };
  const matt = (options: MeshBasicMaterialParameters): MeshBasicMaterial | MeshLambertMaterial =>
    light ? litInVertices(new MeshBasicMaterial(options), 0, 1) : new MeshLambertMaterial(options);
  const porcelain = (transparent: boolean): Material =>
    light
      ? litInVertices(new MeshBasicMaterial({ vertexColors: true, transparent }), 0.22, 34)
      : new MeshPhysicalMaterial({ ...GLAZE, transparent });
  const edge = (transparent: boolean, color = INK): Material =>
    asHull(new MeshBasicMaterial({ color, side: BackSide, transparent }));
  const made = {
    bone: veiled(matt({ transparent: true }), boneVeil, { clear: 0.2, rim: 0.95 }),
    gum: veiled(matt({ vertexColors: true, transparent: true }), gumVeil, { clear: 0.04, rim: 0.6 }),
    porcelain: porcelain(false),
    root: matt({ color: '#e4d9c0' }),
    steel: light
      ? litInVertices(new MeshBasicMaterial({ color: '#3a404a' }), 0.25, 14, 0.24)
      : new MeshStandardMaterial({
          color: '#4a505a',
          metalness: 0.9,
          roughness: 0.44,
          envMapIntensity: 1.25,
        }),
    polished: light
      ? litInVertices(new MeshBasicMaterial({ color: '#636a77' }), 0.7, 40, 0.9)
      : new MeshStandardMaterial({
          color: '#7c838e',
          metalness: 0.96,
          roughness: 0.22,
          envMapIntensity: 1.25,
        }),
    mark: new MeshBasicMaterial({ color: '#12151b' }),
    crown: porcelain(true),
    bite: porcelain(true),
    collar: matt({ color: '#e9e2d2', transparent: true }),
    hull: edge(false),
    crownHull: edge(true),
    biteHull: edge(true),
    boneHull: edge(true, '#8d7a5c'),
  };
  return {
    ...made,
    boneVeil,
    gumVeil,
    tintBone: (share) => made.bone.color.lerpColors(MUCOSA, PLASTER, share),
    mirrors: [made.steel, made.polished].filter((m) => m instanceof MeshStandardMaterial),
    dispose: () => {
      for (const material of Object.values(made)) material.dispose();
    },
  };
}
