import { type Material, Vector4 } from 'three';
import { archDirections, fromArch, toArch } from '../../core/anatomy/arch.ts';
import { shownRange } from '../../core/anatomy/section.ts';
import { broughtOut } from '../../core/geometry/carry.ts';
import { dot, type Vec3 } from '../../core/geometry/vec.ts';
import type { Evaluation } from '../../core/plan/evaluate.ts';
import { jawStands, seenPoints } from './showCamera.ts';

/** Where the drawing has run out into the paper, in the drawing's own frame, mm; what materials read at every frame. */
export interface RunOut {
  /** Planes across the arch at both ends: unit normal toward the gap, and what makes the distance 0 on the plane. */
  readonly ends: { value: readonly [Vector4, Vector4] };
  /** Over the root tips: level and length over which it runs out; below the crowns: the same. */
  readonly levels: { value: Vector4 };
}

export const newRunOut = (): RunOut => ({
  ends: { value: [new Vector4(), new Vector4()] },
  levels: { value: new Vector4() },
});

/** How far beside the neighbours' outer contacts the drawing has run out, and over which length along the arch, mm. */
const BESIDE = { at: 5.6, over: 5 } as const;
/** The same over the highest root tip; below the lowest upper edge, where lower teeth are shown. */
const ABOVE = { at: 3.4, over: 7 } as const;
const BELOW = { at: 7, over: 5 } as const;
/** It has run out this far before the model ends, mm. */
const SPARE = 0.4;

/** Puts the run-out where a plan's model is: along the arch, so that no cut end is seen from any side. */
export function layRunOut({ ends, levels }: RunOut, evaluation: Evaluation): void {
  const { anatomy } = evaluation;
  const { arch, teeth, toJaw, toJawDirection } = anatomy;
  const stands = jawStands(anatomy);
  const range = shownRange(anatomy);
  const outer = [teeth.mesial, teeth.distal].flatMap(({ marks }) =>
    [marks.mesialContact, marks.distalContact].map((p) => toArch(arch, p)[0]),
  );
  const places = [
    Math.max(range.from + SPARE, Math.min(...outer) - BESIDE.at),
    Math.min(range.to - SPARE, Math.max(...outer) + BESIDE.at),
  ];
  places.forEach((q, i) => {
    const way = i === 0 ? 1 : -1;
    const { tangent } = archDirections(arch, q);
    const [x, y, z] = toJawDirection(tangent);
    const inward: Vec3 = broughtOut({ ...stands, origin: [0, 0, 0] }, [way * x, way * y, way * z]);
    const at = broughtOut(stands, toJaw(fromArch(arch, q, 0, 0)));
    ends.value[i].set(...inward, -dot(inward, at));
  });
  const heights = seenPoints(evaluation).map((p) => p[2]);
  const floor = broughtOut(stands, toJaw([0, 0, anatomy.ridge.floor]))[2];
  const top = Math.min(Math.max(...heights) + ABOVE.at, floor - SPARE);
  levels.value.set(top, ABOVE.over, Math.min(...heights) - BELOW.at, BELOW.over);
}

/**
 * Lets a material run out into the paper, `sooner` times as fast; round at the corners, since what is lacking on two sides counts together. It still hides what
 * is drawn after it and lies behind it: the inside of its own edge.
 */
export function runningOut<M extends Material>(material: M, { ends, levels }: RunOut, sooner: number): M {
  const before = material.onBeforeCompile.bind(material);
  const key = material.customProgramCacheKey();
  material.transparent = true;
  material.customProgramCacheKey = () => `${key} running out ${sooner}`;
  material.onBeforeCompile = (shader, gl) => {
    before(shader, gl);
    Object.assign(shader.uniforms, { uEnds: ends, uLevels: levels });
    shader.vertexShader = shader.vertexShader
      .replace('#include <common>', '#include <common>\nvarying vec3 vPlace;')
      .replace(
        '#include <project_vertex>',
        '#include <project_vertex>\nvPlace = (modelMatrix * vec4(transformed, 1.0)).xyz;',
      );
    shader.fragmentShader = shader.fragmentShader
      .replace(
        '#include <common>',
        '#include <common>\nvarying vec3 vPlace;\nuniform vec4 uEnds[2];\nuniform vec4 uLevels;',
      )
      .replace(
        '#include <opaque_fragment>',
        `#include <opaque_fragment>
        vec4 at = vec4(vPlace, 1.0);
        vec4 lack = max(vec4(0.0), 1.0 - vec4(
          dot(uEnds[0], at) / float(${BESIDE.over}),
          dot(uEnds[1], at) / float(${BESIDE.over}),
          (uLevels.x - at.z) / uLevels.y,
          (at.z - uLevels.z) / uLevels.w
        ));
        gl_FragColor.a *= smoothstep(0.0, 1.0, 1.0 - float(${sooner}) * length(lack));`,
      );
  };
  return material;
}
