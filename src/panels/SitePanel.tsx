import { type ReactNode, useId } from 'react';
import { SITES, type SiteCode } from '../core/anatomy/site.ts';
import { libraryShape } from '../core/implant/library.ts';
import { defaultSite } from '../core/plan/defaults.ts';
import { planAlongCrown } from '../core/plan/newPlan.ts';
import type { Plan } from '../core/plan/plan.ts';
import { SITE_PRESETS } from '../core/plan/presets.ts';
import { type SiteGroup, type SiteNumber, siteNumbers } from '../core/plan/siteFields.ts';
import type { PlanStores } from '../state/stores.ts';
import { useEvaluation } from '../state/usePlan.ts';
import { formatNumber } from '../words/format.ts';
import { presentSiteNumber, siteGroupName, toothName } from '../words/presentSite.ts';
import { say } from '../words/saySite.ts';
import { SiteField } from './SiteField.tsx';
import { SiteSketch } from './SiteSketch.tsx';
import { useSiteNumbers } from './useSiteNumbers.ts';
import './site.css';

/** Headings in the order in which a site is described; those that are open at first. */
const GROUPS: readonly SiteGroup[] = [
  'gap',
  'ridge',
  'depth',
  'socket',
  'gum',
  'reference',
  'mesial',
  'distal',
  'arch',
];
const OPEN: ReadonlySet<SiteGroup> = new Set<SiteGroup>(['gap', 'ridge', 'socket']);

const presetName = (id: string): string => say(`preset.${id}` as 'preset.gum-thin');

/** The same implant and fixing, on the planned crown's axis of this site. */
const stood = (plan: Plan, site: Plan['site']): Plan => ({
  ...plan,
  site,
  pose: planAlongCrown(site, plan.implant, plan.fixing, plan.title, plan.crown).pose,
});

/** Another tooth has another plan: nothing that was entered for the old one fits. */
const atTooth = (plan: Plan, tooth: SiteCode): Plan => ({
  ...stood(plan, defaultSite(tooth)),
  title: '',
  note: '',
  implant: libraryShape(plan.implant.name) ?? plan.implant,
});

function Starts({ stores, site }: { stores: PlanStores; site: Plan['site'] }) {
  const { document } = stores;
  const toothId = useId();
  const startId = useId();
  const chooseTooth = (value: string) => {
    const tooth = SITES.find((one) => String(one) === value);
    if (!tooth || tooth === site.tooth) return;
    const label = say('edit.siteTooth', { tooth: formatNumber({ value: tooth, unit: 'count' }) });
    document.edit(label, (plan) => atTooth(plan, tooth));
  };
  const choosePreset = (id: string) => {
    const preset = SITE_PRESETS.find((one) => one.id === id);
    if (!preset) return;
    document.edit(say('edit.sitePreset', { preset: presetName(id) }), (plan) => ({
      ...plan,
      site: preset.apply(plan.site),
    }));
  };
  return (
    <div className="site-starts">
      <label className="caption" htmlFor={toothId}>
        {say('site.tooth')}
      </label>
      <select id={toothId} value={site.tooth} onChange={(event) => chooseTooth(event.target.value)}>
        {SITES.map((tooth) => (
          <option key={tooth} value={tooth}>
            {toothName(tooth)}
          </option>
        ))}
      </select>
      <label className="caption" htmlFor={startId}>
        {say('site.start')}
      </label>
      <select id={startId} value="" onChange={(event) => choosePreset(event.target.value)}>
        <option value="">{say('site.choose')}</option>
        {SITE_PRESETS.map(({ id, share }) => (
          <option key={id} value={id}>
            {share === null
              ? presetName(id)
              : say('preset.withShare', {
                  preset: presetName(id),
                  share: formatNumber({ value: share, unit: 'percent' }),
                })}
          </option>
        ))}
      </select>
    </div>
  );
}

interface GroupProps {
  group: SiteGroup;
  open: boolean;
  children: ReactNode;
}

function Group({ group, open, children }: GroupProps) {
  return (
    <details className="site-group" open={open} data-site-group={group}>
      <summary>
        <h3>{siteGroupName(group)}</h3>
      </summary>
      {children}
    </details>
  );
}

/** What the site is made from: a place to begin, and every number with a drawing of what it measures. */
export function SitePanel({ stores }: { stores: PlanStores }) {
  const evaluation = useEvaluation(stores);
  const { site } = evaluation.plan;
  const { acts, waiting, shown } = useSiteNumbers(stores, site);
  const numbers = siteNumbers(site);
  const lit: SiteNumber | undefined = numbers.find((n) => n.path === shown) ?? numbers[0];
  const words = lit && presentSiteNumber(lit, site);
  const stand = () => stores.document.edit(say('edit.stand'), (plan) => stood(plan, plan.site));
  return (
    <div className="site">
      <Starts stores={stores} site={site} />
      {words && (
        <div className="site-shown">
          <SiteSketch
            anatomy={evaluation.anatomy}
            path={lit.path}
            quantity={words.quantity}
            name={words.name}
          />
          <p className="site-about">
            <b>{words.name}</b> {words.about}
          </p>
        </div>
      )}
      <div className="site-fields">
        <p className="rail-hint">{say('site.hint')}</p>
        {GROUPS.map((group) => {
          const own = numbers.filter((n) => n.group === group);
          if (own.length === 0) return null;
          return (
            <Group key={group} group={group} open={OPEN.has(group)}>
              {own.map((n) => (
                <SiteField key={n.path} site={site} number={n} waiting={waiting.get(n.path)} acts={acts} />
              ))}
            </Group>
          );
        })}
        <button type="button" className="site-stand" onClick={stand}>
          {say('site.stand')}
        </button>
      </div>
    </div>
  );
}
