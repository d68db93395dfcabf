/** A place on an edge of a mesh: between vertices `a` and `b`, at the share `w` of the way. */
export interface EdgePlace {
  readonly a: number;
  readonly b: number;
  readonly w: number;
}

/**
 * Lines along which a value given at the vertices of a closed mesh is zero, each closed: straight across every triangle, from edge to edge, with
 * the greater values always on the same hand. A zero counts as below, so that every line closes. Cost: one pass over the triangles.
 */
export function isolines(triangles: Uint32Array, values: Float64Array): EdgePlace[][] {
  const count = values.length;
  const next = new Map<number, number>();
  const key = (a: number, b: number): number => (a < b ? a * count + b : b * count + a);
  for (let i = 0; i < triangles.length; i += 3) {
    const up0 = values[triangles[i]] > 0;
    const up1 = values[triangles[i + 1]] > 0;
    const up2 = values[triangles[i + 2]] > 0;
    if (up0 === up1 && up1 === up2) continue;
    // The corner that stands alone on its side; the line runs from one of its edges to the other.
    const k = up1 === up2 ? 0 : up0 === up2 ? 1 : 2;
    const a = triangles[i + k];
    const after = key(a, triangles[i + ((k + 1) % 3)]);
    const before = key(a, triangles[i + ((k + 2) % 3)]);
    if (values[a] > 0) next.set(after, before);
    else next.set(before, after);
  }
  const lines: EdgePlace[][] = [];
  for (const start of next.keys()) {
    const line: EdgePlace[] = [];
    for (let edge: number | undefined = start; edge !== undefined; ) {
      const follower: number | undefined = next.get(edge);
      next.delete(edge);
      if (follower === undefined) break;
      const a = Math.floor(edge / count);
      const b = edge % count;
      line.push({ a, b, w: values[a] / (values[a] - values[b]) });
      edge = follower;
    }
    if (line.length > 2) lines.push(line);
  }
  return lines;
}
