import { Color, type MeshBasicMaterial, Vector3 } from 'three';
import { FIRST_STRIP } from './surroundings.ts';

/** Direction of the raking key, from the model toward it, jaw frame; where the full setting's lamp stands. */
export const KEY = new Vector3(26, 44, 46).normalize();
export const KEY_COLOUR = '#fff4e2';
export const SKY_COLOUR = '#fbf8f1';
export const GROUND_COLOUR = '#cfc4b0';
/** Strengths of the key and of the sky, as the full setting's lights have them. */
export const KEY_LIGHT = 2.35;
export const SKY_LIGHT = 1.3;
/** A weak lamp from behind the palate, so that the palatal side is not lost. */
export const FILL = new Vector3(-22, -40, 20).normalize();
export const FILL_LIGHT = 0.6;

/** What the full setting's surroundings add to the sky. */
const LIFT = 1.5;

/** Where the light comes from that is worked out at the vertices, and how soft it is. */
export interface VertexLight {
  /** Direction toward the key, unit. */
  readonly key: Vector3;
  /** Strength of the key, of the stage's. */
  readonly strength: number;
  /** How far round a body the key still reaches: 0 as far as it is seen, 1 all the way round. */
  readonly wrap: number;
  /** What comes up from below, sRGB. */
  readonly ground: string;
}

const STAGE_LIGHT: VertexLight = { key: KEY, strength: 1, wrap: 0, ground: GROUND_COLOUR };

/** Width of the visible edge, mm of the model. */
const HULL = 0.07;

/** Turns a material into a hull: every vertex moved outward along its normal. */
export function asHull(material: MeshBasicMaterial): MeshBasicMaterial {
  material.onBeforeCompile = (shader) => {
    shader.vertexShader = shader.vertexShader.replace(
      '#include <begin_vertex>',
      `vec3 transformed = position + normal * ${HULL};`,
    );
  };
  return material;
}

/** What steel mirrors of its surroundings, roughly: the five upright strips, by cos 5φ = 5c − 20c³ + 16c⁵, and the sky above the horizon. */
const MIRROR = `
        vec3 seen = reflect(-toward, across);
        float c = dot(seen.xy, vec2(${Math.cos(FIRST_STRIP)}, ${Math.sin(FIRST_STRIP)})) / max(length(seen.xy), 1e-3);
        float strip = c * (5.0 + c * c * (16.0 * c * c - 20.0));
        vGleam += uSky * uGloss.z * (0.12 + pow(max(0.0, strip), 2.0) * (1.0 - seen.z * seen.z) + 0.25 * smoothstep(-0.3, 0.9, seen.z));`;

/**
 * Works the light out at the vertices: key, sky and ground as in the full setting, a gleam of `gloss` (0 to 1) with that exponent, and for steel
 * what it mirrors of the upright strips and the sky, of strength `mirror`; `from` where another light than the stage's is wanted. A fraction of the cost where there is no graphics processor, and on
 * meshes this fine nearly the same picture.
 */
export function litInVertices(
  material: MeshBasicMaterial,
  gloss: number,
  exponent: number,
  mirror = 0,
  from: VertexLight = STAGE_LIGHT,
): MeshBasicMaterial {
  const key = new Color(KEY_COLOUR).multiplyScalar((from.strength * KEY_LIGHT) / Math.PI);
  const sky = new Color(SKY_COLOUR).multiplyScalar((LIFT * SKY_LIGHT) / Math.PI);
  const ground = new Color(from.ground).multiplyScalar((LIFT * SKY_LIGHT) / Math.PI);
  // Two that differ in the shader's text must not share a program.
  material.customProgramCacheKey = () => `lit ${mirror > 0}`;
  material.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, {
      uKey: { value: from.key },
      uWrap: { value: from.wrap },
      uKeyColour: { value: key },
      uSky: { value: sky },
      uGround: { value: ground },
      uFill: { value: FILL },
      uFillColour: { value: new Color(SKY_COLOUR).multiplyScalar(FILL_LIGHT / Math.PI) },
      uGloss: { value: new Vector3(gloss, exponent, mirror) },
    });
    shader.vertexShader = shader.vertexShader
      .replace(
        '#include <common>',
        `#include <common>
        varying vec3 vLight;
        varying vec3 vGleam;
        uniform vec3 uKey, uKeyColour, uFill, uFillColour, uSky, uGround, uGloss;
        uniform float uWrap;`,
      )
      .replace(
        '#include <begin_vertex>',
        `#include <begin_vertex>
        vec3 across = normalize(mat3(modelMatrix) * normal);
        vec3 toward = normalize(cameraPosition - (modelMatrix * vec4(position, 1.0)).xyz);
        vLight = mix(uGround, uSky, 0.5 + 0.5 * across.z) + uKeyColour * max(0.0, (dot(across, uKey) + uWrap) / (1.0 + uWrap))
          + uFillColour * max(0.0, dot(across, uFill));
        vGleam = uKeyColour * uGloss.x * pow(max(0.0, dot(across, normalize(uKey + toward))), uGloss.y);
        ${mirror > 0 ? MIRROR : ''}`,
      );
    shader.fragmentShader = shader.fragmentShader
      .replace('#include <common>', '#include <common>\nvarying vec3 vLight;\nvarying vec3 vGleam;')
      .replace(
        '#include <color_fragment>',
        '#include <color_fragment>\ndiffuseColor.rgb = diffuseColor.rgb * vLight + vGleam;',
      );
  };
  return material;
}
