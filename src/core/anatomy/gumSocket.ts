import { along, dot, sub, type Vec3 } from '../geometry/vec.ts';
import type { Ridge } from './ridge.ts';
import type { Socket } from './socket.ts';

/** How far inside a socket's wall, and inside the ridge's side, the gum's lining lies, mm: no bone is bare. */
const LINING = 0.1;
/** Cells of the sections' cap that become the mouth of a socket: its corners, inclusive. */
export interface Mouth {
  readonly i0: number;
  readonly i1: number;
  readonly j0: number;
  readonly j1: number;
}

/** Where a vertex of the mouth lies: 1 on its rim, 0 at the socket's bottom; and the place on the rim that it is seen toward. */
interface Spoke {
  readonly out: number;
  readonly i: number;
  readonly j: number;
}

/** A square of cells seen as a disc: rings of cells become rings of the socket's wall. */
function spokeOf({ i0, i1, j0, j1 }: Mouth, i: number, j: number): Spoke {
  const s = (2 * i - i0 - i1) / (i1 - i0);
  const t = (2 * j - j0 - j1) / (j1 - j0);
  const out = Math.max(Math.abs(s), Math.abs(t));
  if (out === 0) return { out, i, j };
  return {
    out,
    i: (i0 + i1 + (s / out) * (i1 - i0)) / 2,
    j: (j0 + j1 + (t / out) * (j1 - j0)) / 2,
  };
}

/** The lining of a fresh socket, within its void (rule S11) and within the ridge. */
class Lining {
  /** The lowest height over the socket's centre, along its axis, at which the axis is well inside the ridge, mm. */
  readonly bottom: number;

  constructor(
    private readonly socket: Socket,
    private readonly ridge: Ridge,
  ) {
    let h = LINING - socket.semi[2];
    while (h < 0 && this.outside(along(socket.centre, socket.a, h)) > -3 * LINING) h += 0.25;
    this.bottom = h;
  }

  private outside(p: Vec3): number {
    return this.ridge.solid(p[0], p[1], p[2]);
  }

  /** Point at an angle about the axis (0 mesial, π/2 facial) and a height over the centre. */
  at(angle: number, height: number): Vec3 {
    const { centre, a, em, ef, semi } = this.socket;
    const [sa, sb, sl] = semi;
    const core = along(centre, a, height);
    const bowl = height >= 0 ? 1 : Math.sqrt(Math.max(0, 1 - (height / (sl - LINING)) ** 2));
    const wall = (k: number): Vec3 =>
      along(
        along(core, em, k * bowl * (sa - LINING) * Math.cos(angle)),
        ef,
        k * bowl * (sb - LINING) * Math.sin(angle),
      );
    const p = wall(1);
    this.ridge.locate(p[0], p[1], p[2]);
    if (this.ridge.d < this.ridge.rho || this.outside(p) <= -LINING) return p;
    let lo = 0;
    let hi = 1;
    for (let i = 0; i < 12; i++) {
      const mid = (lo + hi) / 2;
      if (this.outside(wall(mid)) <= -LINING) lo = mid;
      else hi = mid;
    }
    return wall(lo);
  }
}

/** Lets the cells of the cap between the margins down onto the wall of a fresh socket, so that the gum stands round its mouth as a collar. */
export function openSocket(
  positions: Float64Array,
  columns: number,
  mouth: Mouth,
  socket: Socket,
  ridge: Ridge,
): void {
  const { i0, i1, j0, j1 } = mouth;
  const lining = new Lining(socket, ridge);
  const rim = (i: number, j: number): Vec3 => {
    const [a, b] = [Math.floor(i + 1e-9), Math.floor(j + 1e-9)];
    const w = Math.max(0, i - a) + Math.max(0, j - b);
    const p = 3 * (a * columns + b);
    if (w < 1e-9) return [positions[p], positions[p + 1], positions[p + 2]];
    const n = i - a > 1e-9 ? p + 3 * columns : p + 3;
    const mix = (k: number) => positions[p + k] + w * (positions[n + k] - positions[p + k]);
    return [mix(0), mix(1), mix(2)];
  };
  const [sa, sb, sl] = socket.semi;
  for (let i = i0 + 1; i < i1; i++) {
    for (let j = j0 + 1; j < j1; j++) {
      const spoke = spokeOf(mouth, i, j);
      const edge = sub(rim(spoke.i, spoke.j), socket.centre);
      const angle = Math.atan2(dot(edge, socket.ef) / sb, dot(edge, socket.em) / sa);
      const top = dot(edge, socket.a) - 0.35;
      // Even steps along the straight part, then round the bowl.
      const straight = Math.max(0, top);
      const way = (1 - spoke.out) * (straight + (sl * Math.PI) / 2);
      const height =
        way < straight
          ? top - way
          : Math.min(0, top) -
            sl * Math.sin(Math.min(1, (way - straight) / sl / (Math.PI / 2)) * (Math.PI / 2));
      const p = lining.at(angle, Math.max(lining.bottom, height));
      positions.set(p, 3 * (i * columns + j));
    }
  }
}
