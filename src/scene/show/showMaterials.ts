import {
  BackSide,
  Color,
  type Material,
  MeshBasicMaterial,
  type MeshBasicMaterialParameters,
  MeshPhysicalMaterial,
  MeshStandardMaterial,
  Vector3,
} from 'three';
import { INK } from '../materials.ts';
import { asHull, litInVertices, type VertexLight } from '../shaders.ts';
import { newRunOut, type RunOut, runningOut } from './runOut.ts';
import { SHOW_KEY } from './showCamera.ts';

/** An amount that a material reads at every frame. */
export interface Amount {
  value: number;
}

/** Everything the patient's drawing is made of. */
export interface ShowMaterials {
  readonly bone: Material;
  readonly gum: Material;
  /** The gum round the new crown's neck. */
  readonly cuff: Material;
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
  readonly runOut: RunOut;
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
const GUM_SHELL: Shell = { clear: 0.04, rim: 0.6 };
const PLASTER = new Color('#d3c19a');

const TOWARD_KEY = new Vector3(...SHOW_KEY);
/** Light goes a little into gum, and round it: its shade is its own colour and not grey. */
const IN_GUM: VertexLight = { key: TOWARD_KEY, strength: 0.95, wrap: 0.5, ground: '#efd3c8' };
const ON_PLASTER: VertexLight = { key: TOWARD_KEY, strength: 0.85, wrap: 0.45, ground: '#e0d2b8' };
const ON_ENAMEL: VertexLight = { key: TOWARD_KEY, strength: 0.72, wrap: 0, ground: '#d2cbc0' };

const GLAZE = {
  vertexColors: true,
  roughness: 0.36,
  metalness: 0,
  clearcoat: 0.35,
  clearcoatRoughness: 0.25,
};

/** What lies in the gum has run out before the gum has, and its ink before it: or it would show through. */
const SOONER = { tooth: 1.3, edge: 1.7 } as const;

/** The materials of the drawing. Gum and bone are lit at their vertices in both settings; the light one does the same with all the rest. */
export function showMaterials(light: boolean): ShowMaterials {
  const boneVeil: Amount = { value: 0 };
  const gumVeil: Amount = { value: 0 };
  const runOut = newRunOut();
  const running = <M extends Material>(material: M, sooner = 1): M => runningOut(material, runOut, sooner);
  const matt = (options: MeshBasicMaterialParameters, from = ON_PLASTER, gloss = 0): MeshBasicMaterial =>
    litInVertices(new MeshBasicMaterial(options), gloss, 16, 0, from);
  const porcelain = (): Material =>
    light
      ? litInVertices(
          new MeshBasicMaterial({ vertexColors: true, transparent: true }),
          0.22,
          34,
          0,
          ON_ENAMEL,
        )
      : new MeshPhysicalMaterial({ ...GLAZE, transparent: true });
  const edge = (color = INK): Material =>
    asHull(new MeshBasicMaterial({ color, side: BackSide, transparent: true }));
  const gum = matt({ vertexColors: true, transparent: true }, IN_GUM, 0.05);
  const made = {
    bone: running(veiled(matt({ transparent: true }), boneVeil, { clear: 0.2, rim: 0.75 })),
    gum: running(veiled(gum, gumVeil, GUM_SHELL)),
    cuff: veiled(matt({ vertexColors: true, transparent: true }, IN_GUM, 0.05), gumVeil, GUM_SHELL),
    porcelain: running(porcelain(), SOONER.tooth),
    root: running(matt({ color: '#e4d9c0' }), SOONER.tooth),
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
    crown: porcelain(),
    bite: running(porcelain()),
    collar: matt({ color: '#e9e2d2', transparent: true }),
    hull: running(edge(), SOONER.edge),
    crownHull: edge(),
    biteHull: running(edge(), SOONER.edge),
    boneHull: running(edge('#8d7a5c'), SOONER.edge),
  };
  return {
    ...made,
    boneVeil,
    gumVeil,
    runOut,
    tintBone: (share) => made.bone.color.lerpColors(MUCOSA, PLASTER, share),
    mirrors: [made.steel, made.polished].filter((m) => m instanceof MeshStandardMaterial),
    dispose: () => {
      for (const material of Object.values(made)) material.dispose();
    },
  };
}
