/** A place on an edge of a mesh: between vertices `a` and `b`, at the share `w` of the way. */
export interface EdgePlace {
  readonly a: number;
  readonly b: number;
  readonly w: number;
}

/** A line over a mesh; open where it runs out at the mesh's edge. */
export interface Isoline {
  readonly places: readonly EdgePlace[];
  readonly closed: boolean;
}

/**
 * Lines along which a value given at the vertices of a mesh is zero: straight across every triangle, from edge to edge, with the greater
 * values always on the same hand. A zero counts as below, so that on a closed mesh every line closes. Cost: one pass over the triangles.
 */
export function isolines(triangles: Uint32Array, values: Float64Array): Isoline[] {
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
  const place = (edge: number): EdgePlace => {
    const a = Math.floor(edge / count);
    const b = edge % count;
    return { a, b, w: values[a] / (values[a] - values[b]) };
  };
  const reached = new Set(next.values());
  const starts = [...next.keys()];
  const lines: Isoline[] = [];
  for (const start of [...starts.filter((edge) => !reached.has(edge)), ...starts]) {
    if (!next.has(start)) continue;
    const places: EdgePlace[] = [];
    let edge = start;
    do {
      places.push(place(edge));
      const follower = next.get(edge);
      next.delete(edge);
      if (follower === undefined) break;
      edge = follower;
    } while (edge !== start);
    lines.push({ places, closed: edge === start && places.length > 2 });
  }
  return lines.filter((line) => line.places.length > 1);
}
