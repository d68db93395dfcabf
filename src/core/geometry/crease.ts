import type { TriangleMesh } from './mesh.ts';
import { rad } from './vec.ts';

/** Area-weighted normals of the triangles: three numbers each, of length twice the area. */
function faceNormals({ positions: p, triangles: t }: TriangleMesh): Float64Array {
  const out = new Float64Array(t.length);
  for (let i = 0; i < t.length; i += 3) {
    const a = 3 * t[i];
    const b = 3 * t[i + 1];
    const c = 3 * t[i + 2];
    const ux = p[b] - p[a];
    const uy = p[b + 1] - p[a + 1];
    const uz = p[b + 2] - p[a + 2];
    const vx = p[c] - p[a];
    const vy = p[c + 1] - p[a + 1];
    const vz = p[c + 2] - p[a + 2];
    out[i] = uy * vz - uz * vy;
    out[i + 1] = uz * vx - ux * vz;
    out[i + 2] = ux * vy - uy * vx;
  }
  return out;
}

function normalise(v: Float64Array): Float64Array {
  for (let i = 0; i < v.length; i += 3) {
    const length = Math.sqrt(v[i] * v[i] + v[i + 1] * v[i + 1] + v[i + 2] * v[i + 2]) || 1;
    v[i] /= length;
    v[i + 1] /= length;
    v[i + 2] /= length;
  }
  return v;
}

/**
 * The same mesh with smooth vertex normals (unit, outward): the area-weighted mean of the triangles round each vertex. Where only
 * the first `walls` triangles are to be smooth, the others (flat caps) do not bend the normals of the vertices they share.
 */
export function withSmoothNormals(mesh: TriangleMesh, walls = mesh.triangles.length / 3): TriangleMesh {
  const { positions, triangles } = mesh;
  const faces = faceNormals(mesh);
  const normals = new Float64Array(positions.length);
  const walled = new Uint8Array(positions.length / 3);
  for (let i = 0; i < triangles.length; i++) {
    const v = triangles[i];
    if (i < 3 * walls) walled[v] = 1;
    else if (walled[v] === 1) continue;
    const f = i - (i % 3);
    normals[3 * v] += faces[f];
    normals[3 * v + 1] += faces[f + 1];
    normals[3 * v + 2] += faces[f + 2];
  }
  return { positions, triangles, normals: normalise(normals) };
}

/**
 * A copy for drawing, not closed by its indices any more: every triangle has its own three vertices, and a vertex normal is
 * the mean of those triangles round the point that stand within `degrees` of its own triangle, so that edges sharper than that stay crisp.
 */
export function creased(mesh: TriangleMesh, degrees: number): TriangleMesh {
  const { positions, triangles } = mesh;
  const faces = faceNormals(mesh);
  const units = normalise(faces.slice());
  const around: number[][] = Array.from({ length: positions.length / 3 }, () => []);
  for (let i = 0; i < triangles.length; i++) around[triangles[i]].push(i - (i % 3));
  const least = Math.cos(rad(degrees));
  const out = new Float64Array(3 * triangles.length);
  const normals = new Float64Array(3 * triangles.length);
  for (let i = 0; i < triangles.length; i++) {
    const own = i - (i % 3);
    const v = triangles[i];
    for (const f of around[v]) {
      const cos = units[f] * units[own] + units[f + 1] * units[own + 1] + units[f + 2] * units[own + 2];
      if (cos < least) continue;
      for (let k = 0; k < 3; k++) normals[3 * i + k] += faces[f + k];
    }
    for (let k = 0; k < 3; k++) out[3 * i + k] = positions[3 * v + k];
  }
  return {
    positions: out,
    triangles: Uint32Array.from(triangles, (_, i) => i),
    normals: normalise(normals),
  };
}
