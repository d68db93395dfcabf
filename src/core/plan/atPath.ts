/** Value at a dotted path; undefined where there is none. */
export function valueAt(root: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (at, key) =>
        typeof at === 'object' && at !== null && Object.hasOwn(at, key)
          ? (at as Record<string, unknown>)[key]
          : undefined,
      root,
    );
}

/** A copy of a tree with one number changed; arrays stay arrays. */
export function withValue<T>(root: T, keys: readonly string[], value: number): T {
  const [key, ...rest] = keys;
  if (key === undefined) return value as T;
  if (Array.isArray(root)) {
    return root.map((v, i) => (String(i) === key ? withValue(v, rest, value) : v)) as T;
  }
  const node = root as Record<string, unknown>;
  return { ...node, [key]: withValue(node[key], rest, value) } as T;
}
