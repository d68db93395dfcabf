/** Golden section toward the least value between `from` and `to`, `rounds` times; the caller keeps what `f` has seen. */
export function golden(f: (x: number) => number, from: number, to: number, rounds: number): void {
  const share = (Math.sqrt(5) - 1) / 2;
  let a = from;
  let b = to;
  let x = b - share * (b - a);
  let y = a + share * (b - a);
  let fx = f(x);
  let fy = f(y);
  for (let i = 0; i < rounds; i++) {
    if (fx < fy) {
      b = y;
      y = x;
      fy = fx;
      x = b - share * (b - a);
      fx = f(x);
    } else {
      a = x;
      x = y;
      fx = fy;
      y = a + share * (b - a);
      fy = f(y);
    }
  }
}
