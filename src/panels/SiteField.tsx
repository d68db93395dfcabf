import type { Site } from '../core/anatomy/site.ts';
import type { Fault } from '../core/plan/fault.ts';
import type { SiteNumber } from '../core/plan/siteFields.ts';
import { presentSiteFault, presentSiteNumber } from '../words/presentSite.ts';
import { say } from '../words/saySite.ts';
import { SpinField } from './SpinField.tsx';

const STEPS = { mm: { step: 0.1, page: 0.5 }, deg: { step: 1, page: 5 } } as const;

/** What a field can ask of its panel. */
export interface SiteActs {
  readonly set: (number: SiteNumber, value: number) => void;
  /** The field has the pointer or the focus: its measure is to be shown. */
  readonly show: (path: string) => void;
  readonly hold: (number: SiteNumber, phase: 'begin' | 'end') => void;
}

/** A field of the site has the focus: then the drawing is its own, whatever scrolls under the pointer. */
const typing = (): boolean => document.activeElement?.matches('[data-site-field] input') === true;

interface SiteFieldProps {
  site: Site;
  number: SiteNumber;
  /** Typed, but in contradiction with the other numbers: it stands in the field and waits. */
  waiting?: { readonly value: number; readonly fault: Fault };
  acts: SiteActs;
}

/** A number of the site with its mean beside it. */
export function SiteField({ site, number, waiting, acts }: SiteFieldProps) {
  const { path, unit, mean, low, high, known } = number;
  const { label, name, mean: meanText } = presentSiteNumber(number, site);
  const value = waiting?.value ?? number.value;
  const away = mean !== null && Math.abs(mean - value) > 1e-9;
  return (
    <div
      className="site-field"
      data-site-field={path}
      data-waiting={waiting === undefined ? undefined : ''}
      onPointerEnter={() => !typing() && acts.show(path)}
    >
      <SpinField
        name={name}
        label={label}
        value={value}
        unit={unit}
        least={low}
        most={high}
        {...STEPS[unit]}
        complaint={waiting && say('site.waits', { fault: presentSiteFault(waiting.fault, site) })}
        onCommit={(next) => acts.set(number, next)}
        onFocused={(focused) => focused && acts.show(path)}
        onHold={(phase) => acts.hold(number, phase)}
        beside={
          mean === null ? (
            <span />
          ) : (
            <button
              type="button"
              className="site-mean"
              disabled={!away}
              aria-label={say('site.reset', { field: name, value: meanText })}
              onClick={() => acts.set(number, mean)}
            >
              {say(known === 'ours' ? 'site.assumed' : 'site.mean', { value: meanText })}
            </button>
          )
        }
      />
    </div>
  );
}
