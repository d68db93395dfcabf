import type { WallProfile as Profile, ProfileSample, Side } from '../core/measure/reading.ts';
import type { Evaluation } from '../core/plan/evaluate.ts';
import { dashed, GHOST, WITHIN } from '../marks/dash.ts';
import { polyline } from '../marks/path.ts';
import { runsOf } from '../paper/wallRuns.ts';
import { areaOf, edgesOf, limitLine } from './profileShape.ts';

interface WallProps {
  profile: Profile;
  /** A pattern's address. */
  hatch: string;
}

const none = () => 0;
const wall = (s: ProfileSample) => Math.max(0, s.wall ?? 0);
const outside = (s: ProfileSample) => Math.min(0, s.wall ?? 0);

/** One side's bone: filled, its edge strong where it counts; void on the way hatched outside it. */
export function Wall({ profile, hatch }: WallProps) {
  const { side, samples } = profile;
  const runs = runsOf(samples);
  const paths = (of: (run: (typeof runs)[number]) => string) => runs.map(of).join('');
  const edge = (counting: boolean) =>
    paths((run) =>
      edgesOf(run, side, counting)
        .map((points) => polyline(points))
        .join(''),
    );
  return (
    <g data-profile={side}>
      <path className="wall-fill" d={paths((run) => polyline(areaOf(run, side, none, wall), true))} />
      {samples.some(({ gap }) => gap > 0.005) && (
        <path
          className="void-edge"
          data-void={side}
          fill={hatch}
          d={paths((run) =>
            polyline(
              areaOf(run, side, wall, (s) => wall(s) + s.gap),
              true,
            ),
          )}
        />
      )}
      <path className="wall-edge-thin" d={edge(false)} />
      <path className="wall-edge" data-edge={side} d={edge(true)} />
    </g>
  );
}

/** Where the implant's surface stands out of the bone: by how much, hatched, across the middle onto the other side. */
export function Bare({ profile, hatch }: WallProps) {
  const { side, samples } = profile;
  if (!samples.some((s) => outside(s) < 0)) return null;
  const areas = runsOf(samples).map((run) => polyline(areaOf(run, side, none, outside), true));
  return <path className="bare" data-bare={side} fill={hatch} d={areas.join('')} />;
}

/** The wall's edge of the kept pose, in the ghost's dashes. */
export function KeptEdge({ profile: { side, samples } }: Pick<WallProps, 'profile'>) {
  const d = runsOf(samples)
    .flatMap((run) => edgesOf(run, side, false))
    .map((points) => dashed(points, GHOST))
    .join('');
  return <path className="kept-edge" data-kept={side} d={d} />;
}

/** A side’s limits: within from the dashed line outward, beyond inside the solid one. */
export function Limits({ evaluation, side }: { evaluation: Evaluation; side: Side }) {
  const { plan, placement } = evaluation;
  const [from, to] = [Math.max(0, placement.tP), placement.tA];
  return (
    <>
      <path className="limit-near" d={dashed(limitLine(plan, side, 'near', from, to), WITHIN)} />
      <path className="limit-beyond" d={polyline(limitLine(plan, side, 'beyond', from, to))} />
    </>
  );
}
