import * as three from 'three';
import { GLTFLoader } from 'three/addons/loaders/GLTFLoader.js';
import { lowerCrownMesh, toothMesh } from '../../src/core/anatomy/crown.ts';
import { siteInJaw } from '../../src/core/anatomy/jawFrame.ts';
import { opposingMeshes } from '../../src/core/anatomy/opposing.ts';
import { rootMesh } from '../../src/core/anatomy/root-mesh.ts';
import { LOWER_INCISORS, TOOTH_TABLE } from '../../src/core/anatomy/toothTable.ts';
import { carried } from '../../src/core/geometry/carry.ts';
import type { TriangleMesh } from '../../src/core/geometry/mesh.ts';
import { evaluate } from '../../src/core/plan/evaluate.ts';
import { newCut } from '../../src/scene/cut.ts';
import { geometryOf } from '../../src/scene/geometry.ts';
import { implantFinish, implantGeometry, implantMatrix } from '../../src/scene/Implant.tsx';
import { materials, newBody } from '../../src/scene/materials.ts';
import {
  FILL,
  FILL_LIGHT,
  GROUND_COLOUR,
  KEY_COLOUR,
  KEY_LIGHT,
  SKY_COLOUR,
  SKY_LIGHT,
} from '../../src/scene/shaders.ts';
import { crownGeometry, siteSolids } from '../../src/scene/siteSolids.ts';
import { surroundings } from '../../src/scene/surroundings.ts';
import type { Sheet, Subject } from './cells.ts';

const m = materials(newCut(), newBody(), false);
const light = materials(newCut(), newBody(), true);

/** A picture's solids with the point that is looked at and the radius that has to fit. */
interface Group {
  readonly group: three.Group;
  readonly centre: three.Vector3;
  readonly radius: number;
  /** Lit from the side and dimmer than on the stage: a tooth alone is judged by its relief. */
  readonly raking?: boolean;
}

/** A tooth stands crown up, as on the bench: seen from the front, the mesial side of a patient's right one is at the viewer's left. */
function toothGroup(crown: TriangleMesh, root: TriangleMesh, length: number, left: boolean): Group {
  const side = left ? -1 : 1;
  const frame = { origin: [0, 0, 0], ex: [side, 0, 0], ey: [0, 1, 0], ez: [0, 0, 1] } as const;
  const group = new three.Group();
  group.add(new three.Mesh(crownGeometry(crown, frame, length), m.porcelain));
  group.add(new three.Mesh(geometryOf(carried(root, frame)), m.root));
  return { group, centre: new three.Vector3(0, 0, length * 0.34), radius: length * 0.78, raking: true };
}

function siteGroup(subject: Extract<Subject, { kind: 'site' }>): Group {
  const evaluation = evaluate(subject.plan);
  const { anatomy } = evaluation;
  const solids = siteSolids(anatomy, false, subject.plan.crown);
  const group = new three.Group();
  const has = (part: string) => subject.parts.includes(part);
  const add = (geometry: three.BufferGeometry, material: three.Material, order = 0) => {
    const mesh = new three.Mesh(geometry, material);
    mesh.renderOrder = order;
    group.add(mesh);
  };
  if (has('bone')) add(solids.bone, subject.veiled ? m.veiledBone : m.wholeBone, subject.veiled ? 4 : 0);
  if (has('canal')) add(solids.canal, m.canal, 3);
  if (has('gum')) add(solids.gum, m.wholeGum, 5);
  if (has('teeth'))
    for (const t of solids.teeth) {
      add(t.crown, m.porcelain);
      add(t.root, m.root);
    }
  if (has('bite'))
    for (const { crown } of opposingMeshes(anatomy))
      add(geometryOf(carried(crown, siteInJaw(anatomy))), m.root);
  if (has('crown')) add(solids.crown, m.planned, 8);
  if (has('implant')) {
    const mesh = new three.Mesh(implantGeometry(subject.plan.implant, 64), implantFinish(m));
    mesh.matrixAutoUpdate = false;
    implantMatrix(evaluation, mesh.matrix);
    group.add(mesh);
  }
  const [x, y, z] = anatomy.toJaw([0, 0, -2]);
  // Turned so that the site's facial side looks along + y, like a tooth's.
  const [fx, fy] = anatomy.toJawDirection([0, 1, 0]);
  const turned = new three.Group();
  group.position.set(-x, -y, -z);
  turned.add(group);
  turned.rotation.z = Math.atan2(fx, fy);
  return { group: turned, centre: new three.Vector3(), radius: 17 };
}

/** Metres with `y` up as the file has them, turned back to millimetres with `z` up. */
async function modelGroup(glb: string): Promise<Group> {
  const bytes = Uint8Array.from(atob(glb), (c) => c.charCodeAt(0));
  const { scene } = await new GLTFLoader().parseAsync(bytes.buffer, '');
  const group = new three.Group();
  group.add(scene);
  group.scale.setScalar(1000);
  group.rotation.x = Math.PI / 2;
  group.updateMatrixWorld(true);
  const box = new three.Box3().setFromObject(group);
  const radius = 0.45 * box.getSize(new three.Vector3()).length();
  return { group, centre: box.getCenter(new three.Vector3()), radius };
}

async function groupOf(subject: Subject): Promise<Group> {
  if (subject.kind === 'model') return modelGroup(subject.glb);
  if (subject.kind === 'tooth') {
    const n = TOOTH_TABLE[subject.cls];
    const { crown, root } = toothMesh(subject.cls, n);
    return toothGroup(crown, root, n.crownLength, subject.side === 'left');
  }
  if (subject.kind === 'lower') {
    const n = LOWER_INCISORS[subject.cls];
    return toothGroup(lowerCrownMesh(n), rootMesh(n), n.crownLength, false);
  }
  if (subject.kind === 'implant') {
    const group = new three.Group();
    const turned = new three.Group();
    turned.rotation.z = Math.PI / 2;
    const finish = implantFinish(subject.light ? light : m);
    turned.add(new three.Mesh(implantGeometry(subject.shape, subject.light ? 36 : 128), finish));
    group.add(turned);
    const box = new three.Box3().setFromObject(group);
    return {
      group,
      centre: box.getCenter(new three.Vector3()),
      radius: 0.55 * box.getSize(new three.Vector3()).length(),
    };
  }
  return siteGroup(subject);
}

/** One lamp that rakes from the upper left of the picture, and little sky. */
function litForRelief(scene: three.Scene, camera: three.Camera): void {
  const sky = new three.HemisphereLight(SKY_COLOUR, GROUND_COLOUR, 0.75);
  sky.position.set(0, 0, 1);
  const key = new three.DirectionalLight(KEY_COLOUR, 2.1);
  key.position.set(-46, 38, 30).applyQuaternion(camera.quaternion);
  const fill = new three.DirectionalLight(SKY_COLOUR, 0.5);
  fill.position.set(50, -10, 30).applyQuaternion(camera.quaternion);
  scene.add(sky, key, fill);
}

/** The stage's own lights, kept to the eye's side so that no view is lost in shadow. */
function lit(scene: three.Scene, spin: number): void {
  const sky = new three.HemisphereLight(SKY_COLOUR, GROUND_COLOUR, SKY_LIGHT);
  sky.position.set(0, 0, 1);
  const key = new three.DirectionalLight(KEY_COLOUR, KEY_LIGHT);
  key.position.set(-30, 30, 46).applyAxisAngle(new three.Vector3(0, 0, 1), spin);
  const fill = new three.DirectionalLight(SKY_COLOUR, FILL_LIGHT);
  fill.position.copy(FILL).multiplyScalar(60);
  scene.add(sky, key, fill);
}

/** Left teeth and sites are mirror images of right ones. */
const isLeft = (subject: Subject): boolean =>
  (subject.kind === 'tooth' && subject.side === 'left') ||
  (subject.kind === 'site' && subject.plan.site.tooth > 20);

async function draw({ cells, columns, size }: Sheet): Promise<string> {
  const rows = Math.ceil(cells.length / columns);
  const label = 22;
  const gl = new three.WebGLRenderer({ antialias: true, preserveDrawingBuffer: true });
  gl.setSize(size, size);
  gl.localClippingEnabled = true;
  const environment = surroundings(gl, false).texture;
  for (const steel of m.mirrors) steel.envMap = surroundings(gl, true).texture;
  const paper = document.createElement('canvas');
  paper.width = columns * size;
  paper.height = rows * (size + label);
  const ink = paper.getContext('2d');
  if (!ink) throw new Error('no canvas');
  ink.fillStyle = '#f5f0e6';
  ink.fillRect(0, 0, paper.width, paper.height);
  ink.font = '14px sans-serif';
  ink.textAlign = 'center';
  for (const [i, cell] of cells.entries()) {
    const { group, centre, radius, raking } = await groupOf(cell.subject);
    const scene = new three.Scene();
    scene.background = new three.Color('#f5f0e6');
    scene.environment = environment;
    scene.environmentIntensity = raking ? 0.2 : 0.42;
    const left = isLeft(cell.subject);
    const turn = ((left ? -1 : 1) * cell.eye.turn * Math.PI) / 180;
    const rise = (cell.eye.rise * Math.PI) / 180;
    // Mesial of a right one is at + x, and at the viewer's left from the front.
    const eye = new three.Vector3(
      Math.sin(turn) * Math.cos(rise),
      Math.cos(turn) * Math.cos(rise),
      Math.sin(rise),
    );
    scene.add(group);
    const reach = raking && cell.eye.rise > 80 ? 0.7 * radius : radius;
    const camera = new three.OrthographicCamera(-reach, reach, reach, -reach, 0.1, 200);
    camera.up.set(0, 0, 1);
    camera.position.copy(centre).addScaledVector(eye, 80);
    camera.lookAt(centre);
    if (raking) litForRelief(scene, camera);
    else lit(scene, turn);
    gl.render(scene, camera);
    const x = (i % columns) * size;
    const y = Math.floor(i / columns) * (size + label);
    ink.drawImage(gl.domElement, x, y + label);
    ink.fillStyle = '#1e2430';
    ink.fillText(cell.caption, x + size / 2, y + 16);
  }
  gl.dispose();
  return paper.toDataURL('image/png');
}

declare global {
  interface Window {
    drawSheet?: (sheet: Sheet) => Promise<string>;
  }
}
window.drawSheet = draw;
