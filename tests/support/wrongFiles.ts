import type { FaultCode } from '../../src/core/plan/fault.ts';
import { printPlanFile } from '../../src/io/planFile.ts';
import { SITES_DEMO } from './demoPlans.ts';

/** A file that must be refused, and the fault by which. */
export interface WrongFile {
  readonly name: string;
  readonly text: string;
  readonly code: FaultCode;
  readonly field: string;
  readonly value?: number | string | null;
  readonly low?: number | null;
  readonly high?: number | null;
  /** What the one line must speak of, beside the field. */
  readonly says?: RegExp;
}

const GOOD = printPlanFile(SITES_DEMO[0].plan);

// A wrong file is made from a right one by changing what a plan may not hold, so its fields have no type of their own here.
type Loose = { [key: string]: Loose };
const loosely = (value: unknown): Loose => value as Loose;

function changed(change: (plan: Loose) => void): string {
  const plan = loosely(JSON.parse(GOOD));
  change(plan);
  return JSON.stringify(plan);
}

/** The file with one number replaced by a text of its own, which JSON.stringify would not write. */
const spelled = (text: string): string =>
  changed((p) => {
    p.site.gap = loosely(7.7777);
  }).replace('7.7777', text);

const put = (path: string, value: unknown): string =>
  changed((plan) => {
    const keys = path.split('.');
    const last = keys.pop() ?? '';
    const at = keys.reduce((o, k) => o[k], plan);
    at[last] = loosely(value);
  });

const without = (path: string): string =>
  changed((plan) => {
    const keys = path.split('.');
    const last = keys.pop() ?? '';
    delete keys.reduce((o, k) => o[k], plan)[last];
  });

export const WRONG_FILES: readonly WrongFile[] = [
  { name: 'empty', text: '', code: 'not-json', field: '' },
  { name: 'not JSON', text: 'plan: 12', code: 'not-json', field: '' },
  { name: 'half a file', text: GOOD.slice(0, 300), code: 'not-json', field: '' },
  { name: 'NaN', text: spelled('NaN'), code: 'not-json', field: '' },
  { name: 'a number', text: '12', code: 'not-a-plan', field: '', value: 12 },
  { name: 'null', text: 'null', code: 'not-a-plan', field: '', value: 'null' },
  { name: 'an array', text: '[]', code: 'not-a-plan', field: '', value: '[…]' },
  { name: 'an empty object', text: '{}', code: 'missing', field: 'format' },
  {
    name: 'another format',
    text: put('format', 'a-mesh'),
    code: 'not-a-plan',
    field: 'format',
    value: '"a-mesh"',
  },
  {
    name: 'a newer version',
    text: put('version', 4),
    code: 'newer-version',
    field: 'version',
    value: 4,
    low: 0,
    high: 3,
  },
  {
    name: 'a negative version',
    text: put('version', -1),
    code: 'unknown-version',
    field: 'version',
    value: -1,
    low: 0,
    high: 3,
  },
  {
    name: 'a version as text',
    text: put('version', '1'),
    code: 'unknown-version',
    field: 'version',
    value: '"1"',
    low: 0,
    high: 3,
  },
  {
    name: 'a version and a half',
    text: put('version', 1.5),
    code: 'unknown-version',
    field: 'version',
    value: 1.5,
  },
  { name: 'no version', text: without('version'), code: 'missing', field: 'version', low: 0, high: 3 },
  {
    name: 'a missing number',
    text: without('site.gap'),
    code: 'missing',
    field: 'site.gap',
    low: 3,
    high: 14,
  },
  { name: 'a missing part', text: without('pose'), code: 'missing', field: 'pose' },
  {
    name: 'a missing choice',
    text: without('fixing'),
    code: 'missing',
    field: 'fixing',
    says: /screw-bone, screw-gum, cemented/,
  },
  {
    name: '1e999',
    text: spelled('1e999'),
    code: 'out-of-range',
    field: 'site.gap',
    value: 'Infinity',
    low: 3,
    high: 14,
  },
  {
    name: '-1e999',
    text: spelled('-1e999'),
    code: 'out-of-range',
    field: 'site.gap',
    value: '-Infinity',
    low: 3,
    high: 14,
  },
  {
    name: 'a negative width',
    text: put('site.ridge.widths.1.facial', -2),
    code: 'out-of-range',
    field: 'site.ridge.widths.1.facial',
    value: -2,
    low: 0.5,
    high: 12,
  },
  {
    name: 'a number just out of range',
    text: put('site.gap', 14.00000001),
    code: 'out-of-range',
    field: 'site.gap',
    low: 3,
    high: 14,
    says: /14\.0001/,
  },
  {
    name: 'a number as text',
    text: put('site.gap', '6.3'),
    code: 'wrong-type',
    field: 'site.gap',
    value: '"6.3"',
    low: 3,
    high: 14,
  },
  {
    name: 'a list for a number',
    text: put('site.gap', [6.3]),
    code: 'wrong-type',
    field: 'site.gap',
    value: '[…]',
  },
  {
    name: 'null for a number',
    text: put('site.gap', null),
    code: 'wrong-type',
    field: 'site.gap',
    value: 'null',
  },
  { name: 'a number for a text', text: put('title', 5), code: 'wrong-type', field: 'title', value: 5 },
  {
    name: 'half a thread start',
    text: put('implant.thread.starts', 1.5),
    code: 'wrong-type',
    field: 'implant.thread.starts',
    value: 1.5,
    low: 1,
    high: 4,
    says: /whole number/,
  },
  {
    name: 'a title too long',
    text: put('title', 'x'.repeat(121)),
    code: 'too-long',
    field: 'title',
    value: 121,
    high: 120,
  },
  {
    name: 'one width only',
    text: changed((p) => {
      p.site.ridge.widths = loosely([p.site.ridge.widths[0]]);
    }),
    code: 'wrong-count',
    field: 'site.ridge.widths',
    value: 1,
    low: 2,
    high: 6,
  },
  {
    name: 'depths that do not rise',
    text: put('site.ridge.widths.1.depth', 1),
    code: 'depths-not-rising',
    field: 'site.ridge.widths.1.depth',
    value: 1,
    low: 1,
  },
  // 2.0 at the crest's half: an undercut of 4 mm between the entered widths takes more than there is.
  {
    name: 'a self-crossing ridge',
    text: changed((p) => {
      p.site.ridge.undercut = loosely({ depth: 4, level: 9.5, halfHeight: 3 });
    }),
    code: 'ridge-too-thin',
    field: 'site.ridge.undercut.depth',
    value: 4,
    low: 0,
  },
  {
    name: 'a ridge that closes below its last width',
    text: changed((p) => {
      p.site.ridge.widths = loosely([
        { depth: 1, facial: 6, palatal: 3 },
        { depth: 4, facial: 3, palatal: 3 },
      ]);
    }),
    code: 'ridge-too-thin',
    field: 'site.ridge.widths.1.facial',
    value: 3,
    high: 12,
  },
  {
    name: 'an arch too tight',
    text: put('site.arch', { width: 24, depth: 12 }),
    code: 'arch-too-tight',
    field: 'site.arch.depth',
    value: 12,
    low: 0,
  },
  {
    name: 'an arch deeper than a half-circle',
    text: put('site.arch', { width: 20, depth: 20 }),
    code: 'arch-too-tight',
    field: 'site.arch.depth',
    value: 20,
  },
  {
    name: 'tooth 99',
    text: put('site.tooth', 99),
    code: 'not-allowed',
    field: 'site.tooth',
    value: 99,
    says: /11, 12, 13, 14, 21, 22, 23, 24/,
  },
  {
    name: 'tooth 15, a neighbour only',
    text: put('site.tooth', 15),
    code: 'not-allowed',
    field: 'site.tooth',
    value: 15,
  },
  {
    name: 'another state',
    text: put('site.state', { kind: 'grafted' }),
    code: 'not-allowed',
    field: 'site.state.kind',
    says: /healed, socket/,
  },
  {
    name: 'another fixing',
    text: put('fixing', 'glue'),
    code: 'not-allowed',
    field: 'fixing',
    value: '"glue"',
  },
  {
    name: '__proto__ at the top',
    text: GOOD.replace('{', '{"__proto__":{"title":"x"},'),
    code: 'unknown-field',
    field: '__proto__',
  },
  {
    name: '__proto__ inside',
    text: GOOD.replace('"site": {', '"site": {"__proto__":{"gap":5},'),
    code: 'unknown-field',
    field: 'site.__proto__',
  },
  {
    name: '__proto__ among the limits',
    text: GOOD.replace('"limits": {', '"limits": {"__proto__":{"low":{"near":1,"beyond":0}}'),
    code: 'unknown-field',
    field: 'limits.__proto__',
  },
  {
    name: 'constructor',
    text: GOOD.replace('{', '{"constructor":1,'),
    code: 'unknown-field',
    field: 'constructor',
  },
  { name: 'an unknown field', text: put('patient', 'A'), code: 'unknown-field', field: 'patient' },
  {
    name: 'an unknown field deep inside',
    text: put('site.ridge.widths.0.mesial', 2),
    code: 'unknown-field',
    field: 'site.ridge.widths.0.mesial',
  },
  { name: 'an unknown field of two lines', text: put('a\nb', 1), code: 'unknown-field', field: '"a\\nb"' },
  {
    name: 'a limit that does not exist',
    text: put('limits', { colour: {} }),
    code: 'unknown-field',
    field: 'limits.colour',
  },
  {
    name: 'a limit without a band',
    text: put('limits', { root: {} }),
    code: 'missing',
    field: 'limits.root.low',
  },
  {
    name: 'a limit upside down',
    text: put('limits', { root: { low: { near: 1, beyond: 2 } } }),
    code: 'contradiction',
    field: 'limits.root.low.beyond',
    value: 2,
    high: 1,
  },
  {
    name: 'a limit that nothing can meet',
    text: put('limits', { root: { low: { near: 3, beyond: 2 }, high: { near: 1, beyond: 4 } } }),
    code: 'contradiction',
    field: 'limits.root.high.near',
    value: 1,
    low: 3,
  },
  {
    name: 'an apex wider than the body',
    text: put('implant.apicalDiameter', 3.5),
    code: 'contradiction',
    field: 'implant.apicalDiameter',
    value: 3.5,
    high: 3,
    says: /implantedDiameter/,
  },
  {
    name: 'a platform wider than a neckless body',
    text: put('implant.transmucosalLength', 0),
    code: 'contradiction',
    field: 'implant.platformDiameter',
    low: 3,
    high: 3,
  },
  {
    name: 'a scallop on a round neck',
    text: put('implant.scallop', 1),
    code: 'contradiction',
    field: 'implant.index',
    value: 0,
    low: 1,
    high: 2,
  },
  {
    name: 'flutes through the core of the apex',
    text: put('implant.flutes.depth', 0.8),
    code: 'contradiction',
    field: 'implant.flutes.depth',
    value: 0.8,
    high: 0.63,
    says: /apicalDiameter/,
  },
  {
    name: 'flutes longer than the body',
    text: put('implant.flutes.length', 12),
    code: 'contradiction',
    field: 'implant.flutes.length',
    value: 12,
    high: 11,
  },
  {
    name: 'a single flute',
    text: put('implant.flutes.count', 1),
    code: 'not-allowed',
    field: 'implant.flutes.count',
    value: 1,
  },
  {
    name: 'a taper longer than the body',
    text: put('implant.taperLength', 12),
    code: 'contradiction',
    field: 'implant.taperLength',
    value: 12,
    high: 11,
  },
  {
    name: 'a blend that ends before it begins',
    text: put('site.ridge.blend', { from: 5, to: 4 }),
    code: 'contradiction',
    field: 'site.ridge.blend.to',
    value: 4,
    low: 5.5,
  },
  {
    name: 'a nest of 20,000 lists',
    text: put('site', 7).replace('"site":7', `"site":${'['.repeat(20_000)}${']'.repeat(20_000)}`),
    code: 'wrong-type',
    field: 'site',
    value: '[…]',
  },
  {
    name: '10 MB',
    text: `{"title":"${'x'.repeat(10_000_000)}"}`,
    code: 'too-large',
    field: '',
    high: 262_144,
  },
];
