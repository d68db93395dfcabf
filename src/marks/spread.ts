/**
 * Places for labels along one line: each as near as can be to where it wants to be, in the same order, no two
 * nearer than `gap`, all within `low … high` as long as there is room. Least squares, by pooling neighbours
 * that would overlap (the pool-adjacent-violators algorithm). px in, px out, in the order of `wanted`.
 */
export function spread(wanted: readonly number[], gap: number, low: number, high: number): number[] {
  const order = wanted.map((_, i) => i).sort((i, j) => wanted[i] - wanted[j] || i - j);
  const pools: { sum: number; count: number }[] = [];
  order.forEach((index, rank) => {
    pools.push({ sum: wanted[index] - rank * gap, count: 1 });
    for (let last = pools.length - 1; last > 0; last--) {
      const [a, b] = [pools[last - 1], pools[last]];
      if (a.sum / a.count <= b.sum / b.count) break;
      pools.splice(last - 1, 2, { sum: a.sum + b.sum, count: a.count + b.count });
    }
  });
  const most = Math.max(low, high - (wanted.length - 1) * gap);
  const places = new Array<number>(wanted.length);
  let rank = 0;
  for (const { sum, count } of pools) {
    const base = Math.min(most, Math.max(low, sum / count));
    for (let i = 0; i < count; i++, rank++) places[order[rank]] = base + rank * gap;
  }
  return places;
}
