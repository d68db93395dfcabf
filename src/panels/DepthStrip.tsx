import { memo, useId } from 'react';
import type { Drill, NeckCutter } from '../core/drilling/kit.ts';
import { isDrill } from '../core/drilling/passBody.ts';
import { type Drilling, drillingOf } from '../core/plan/drilling.ts';
import { handOf, kitOf, passesShown, rehearsalOf, toolOf } from '../core/plan/inHand.ts';
import type { Plan } from '../core/plan/plan.ts';
import { setFlap, setSpare } from '../core/plan/rehearse.ts';
import { AXIS, dashed } from '../marks/dash.ts';
import { GlyphShape } from '../marks/StatusGlyph.tsx';
import { Tag, tagWidth } from '../marks/Tag.tsx';
import type { PlanStores } from '../state/stores.ts';
import { usePlan } from '../state/usePlan.ts';
import { formatNumber, formatQuantity } from '../words/format.ts';
import { say } from '../words/sayDrill.ts';
import { sayDepth, sayTool } from '../words/sayTool.ts';
import { SpinField } from './SpinField.tsx';
import { HandGauge, PlannedHalves, StripHole } from './StripBodies.tsx';
import {
  labelHeights,
  readLevel,
  STRIP,
  type StripRow,
  type StripScale,
  stripRows,
  stripScale,
} from './stripLayout.ts';
import './section.css';
import './strip.css';

/** Spare depths that the plan's schema takes, mm. */
const SPARE = { least: 0, most: 3 } as const;
const bounds = (low?: { near: number; beyond: number }): number[] => (low ? [low.near, low.beyond] : []);

function wordOf({ key, value }: StripRow, { chain }: Drilling): string {
  switch (key) {
    case 'stop':
      return say('strip.stop', {
        mark: formatNumber({ value, unit: 'mm' }),
        read: say(`strip.read.${chain.mark.read}`),
      });
    case 'seat':
    case 'tip-to-floor':
      return say(`strip.check.${key}`);
    case 'thumb-spare':
      return say('strip.thumbSpare');
    case 'planned-margin':
    case 'cej':
    case 'floor-margin':
    case 'floor':
    case 'thumb':
      return say(`strip.short.${key}`);
    default:
      return say(`strip.${key}`);
  }
}

function numberOf({ key, value }: StripRow, { chain }: Drilling): string {
  if (key === 'stop') return '';
  const limit = chain.checks.find(({ id }) => id === key)?.limit;
  return formatNumber({ value, unit: 'mm', limits: bounds(limit?.low) });
}

interface LabelsProps {
  rows: readonly StripRow[];
  drilling: Drilling;
  scale: StripScale;
}

/** Names and numbers down the left, each on a leader to its level. */
function Labels({ rows, drilling, scale }: LabelsProps) {
  const heights = labelHeights(rows, scale);
  return rows.map((row, i) => {
    const [at, level] = [heights[i], scale.y(row.level)];
    const far = row.across ? STRIP.width - 6 : STRIP.planned;
    const leads = row.status === null && row.key !== 'thumb-spare';
    return (
      <g key={row.key} data-strip={row.key} data-status={row.status ?? undefined}>
        {leads && (
          <path
            className={row.across ? 'strip-level' : 'strip-tick'}
            d={`M${STRIP.labels + 2} ${at}L${STRIP.bone} ${level}H${far}`}
          />
        )}
        {row.status && (
          <g transform={`translate(16 ${at}) scale(0.68)`}>
            <GlyphShape mark={row.status} />
          </g>
        )}
        <text
          className={row.key === 'stop' ? 'strip-word strip-strong' : 'strip-word'}
          x={row.status ? 25 : 10}
          y={at + 4}
        >
          {wordOf(row, drilling)}
        </text>
        <text className="strip-figure" x={STRIP.labels} y={at + 4} textAnchor="end">
          {numberOf(row, drilling)}
        </text>
      </g>
    );
  });
}

/** Gum, bone and the floor behind the two columns. */
function Ground({ drilling, scale, hatch }: Omit<LabelsProps, 'rows'> & { hatch: string }) {
  const { y } = scale;
  const level = (id: string) => drilling.strip.find((one) => one.id === id)?.level ?? 0;
  const [gum, bone, floor] = [y(level('present-gum')), y(0), y(level('floor'))];
  const across = { x: STRIP.bone, width: STRIP.width - 6 - STRIP.bone };
  return (
    <>
      <rect className="strip-gum" {...across} y={gum} height={Math.max(0, bone - gum)} />
      <rect className="strip-bone" {...across} y={bone} height={Math.max(0, floor - bone)} />
      <rect {...across} y={y(level('floor-margin'))} height={floor - y(level('floor-margin'))} fill={hatch} />
      <path className="strip-floor" d={`M${STRIP.bone} ${floor}H${STRIP.width - 6}`} />
    </>
  );
}

/** Where the tool in the hand is to stop in the end, mm below the bone. */
const stopOf = ({ chain }: Drilling, tool: Drill | NeckCutter): number =>
  isDrill(tool) ? chain.fullDepth : (chain.neck?.base ?? 0);

/** How deep the tool stands, on a tag under its tip. */
function NowTag({ depth, y, words }: { depth: number; y: number; words: string }) {
  const number = formatNumber({ value: depth, unit: 'mm' });
  const width = tagWidth({ number, words, size: 13 });
  const x = Math.max(STRIP.hand - width / 2, STRIP.width - 4 - width) - 2;
  return (
    <Tag
      x={Math.min(x, STRIP.width - 4 - width)}
      y={Math.min(y, STRIP.foot - 8)}
      side="right"
      number={number}
      words={words}
      size={13}
    />
  );
}

function labelOf(plan: Plan, { chain }: Drilling, tool: Drill | NeckCutter): string {
  const check = (id: string) => chain.checks.find((one) => one.id === id);
  const said = (id: string) => sayDepth(check(id)?.value ?? Number.NaN);
  return say('strip.label', {
    tool: sayTool(tool),
    depth: sayDepth(handOf(plan).depth),
    full: sayDepth(chain.fullDepth),
    seat: said('seat'),
    seatStatus: say(`status.${check('seat')?.status ?? 'none'}`),
    tip: said('tip-to-floor'),
    tipStatus: say(`status.${check('tip-to-floor')?.status ?? 'none'}`),
  });
}

interface DrawingProps {
  plan: Plan;
  drilling: Drilling;
  tool: Drill | NeckCutter;
}

function Drawing({ plan, drilling, tool }: DrawingProps) {
  const id = useId();
  const { chain, site } = drilling;
  const drill = kitOf(plan).drills[drilling.plan.last?.index ?? 0];
  const rows = stripRows(drilling, drill);
  const scale = stripScale(drilling.strip.map(({ level }) => level));
  const { depth } = handOf(plan);
  const made = passesShown(plan).flatMap((pass) => {
    const used = toolOf(plan, pass.tool);
    return used ? [{ tool: used, depth: pass.depth }] : [];
  });
  const tip = scale.y(depth) + (isDrill(tool) ? (tool.diameter / 2) * scale.pxPerMm : 0) * 0.6;
  const mark = scale.y(readLevel(drill, chain));
  return (
    <svg
      className="drawing strip"
      viewBox={`0 0 ${STRIP.width} ${STRIP.height}`}
      role="img"
      aria-label={labelOf(plan, drilling, tool)}
      data-depth-strip
    >
      <defs>
        <pattern
          id={`${id}floor`}
          width="5"
          height="5"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <path className="hatch-light" d="M0 0V5" />
        </pattern>
      </defs>
      <Ground drilling={drilling} scale={scale} hatch={`url(#${id}floor)`} />
      <Labels rows={rows} drilling={drilling} scale={scale} />
      <StripHole passes={made} scale={scale} />
      <PlannedHalves
        shape={plan.implant}
        shoulder={-site.shoulder}
        drill={drill}
        fullDepth={chain.fullDepth}
        scale={scale}
      />
      <HandGauge
        tool={tool}
        depth={depth}
        stop={stopOf(drilling, tool)}
        sight={rehearsalOf(plan).flap ? 0 : -site.gum}
        scale={scale}
      />
      <path
        className="axis"
        d={dashed(
          [
            { x: STRIP.planned, y: STRIP.top - 14 },
            { x: STRIP.planned, y: scale.y(chain.tip) + 12 },
          ],
          AXIS,
        )}
      />
      <path
        className="strip-stop"
        d={`M${STRIP.planned} ${mark}h${(drill.diameter / 2) * scale.pxPerMm + 4}`}
      />
      <NowTag depth={depth} y={tip + 13} words={say('strip.now')} />
      <text className="strip-word" x="10" y={STRIP.height - 3}>
        {say('strip.unit', {
          scale:
            scale.share > 0.999
              ? say('strip.sameScale')
              : say('strip.smallerScale', {
                  percent: formatQuantity({ value: 100 * scale.share, unit: 'percent' }),
                }),
        })}
      </text>
    </svg>
  );
}

/** Spare depth, the gum, and at what speed the tool in the hand runs. */
function Choices({ stores, plan }: { stores: PlanStores; plan: Plan }) {
  const { document } = stores;
  const { spare, flap } = rehearsalOf(plan);
  const { speed, irrigated } = handOf(plan);
  const lay = (back: boolean) =>
    document.edit(say('edit.flap', { gum: say(back ? 'strip.flapBack' : 'strip.flapLeft') }), (now) =>
      setFlap(now, back),
    );
  return (
    <div className="strip-choices">
      <SpinField
        name={say('strip.spareName')}
        label={say('strip.spare')}
        value={spare}
        unit="mm"
        {...SPARE}
        step={0.1}
        page={0.5}
        onCommit={(value) =>
          document.edit(say('edit.spare', { spare: sayDepth(value) }), (now) => setSpare(now, value))
        }
      />
      {/* biome-ignore lint/a11y/useSemanticElements: words in a line, no form */}
      <div className="strip-words" role="group" aria-label={say('strip.flap')}>
        <span aria-hidden="true">{say('strip.flap')}</span>
        <button type="button" aria-pressed={flap} onClick={() => lay(true)}>
          {say('strip.flapBack')}
        </button>
        <button type="button" aria-pressed={!flap} onClick={() => lay(false)}>
          {say('strip.flapLeft')}
        </button>
      </div>
      <p className="caption">
        {say(irrigated ? 'strip.run' : 'strip.runDry', {
          speed: formatQuantity({ value: speed, unit: 'rpm' }),
        })}
      </p>
    </div>
  );
}

/** Depths along the planned axis as one strip in the section's scale: what is planned, both ends checked, and how deep the tool in the hand stands. */
export const DepthStrip = memo(function DepthStrip({ stores }: { stores: PlanStores }) {
  const plan = usePlan(stores);
  const drilling = drillingOf(plan);
  const tool = toolOf(plan, handOf(plan).tool);
  return (
    <>
      {drilling && tool ? (
        <Drawing plan={plan} drilling={drilling} tool={tool} />
      ) : (
        <p className="calm">{say('strip.none')}</p>
      )}
      <Choices stores={stores} plan={plan} />
    </>
  );
});
