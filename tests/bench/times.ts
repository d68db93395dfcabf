import { cpus, loadavg } from 'node:os';

export const median = (list: readonly number[]): number => {
  const sorted = [...list].sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)];
};

/** How long each of `n` runs took, ms. */
export function times(n: number, run: (i: number) => void): number[] {
  const out: number[] = [];
  for (let i = 0; i < n; i++) {
    const from = performance.now();
    run(i);
    out.push(performance.now() - from);
  }
  return out;
}

/** What ran it, and whether anything else was running. */
export function machine(): string {
  const busy = loadavg()[0];
  const noise = busy > 1 ? ': not a quiet machine, so the times are too long' : '';
  return `Node ${process.version}. Load average ${busy.toFixed(1)} on ${cpus().length} processors${noise}.`;
}
