/**
 * Which room may import which. A room imports only rooms that stand above it in ROOMS, type imports too.
 * Exceptions are named below. Every rule carries its reason, and the message shows it.
 */
const ROOMS = [
  'core/geometry',
  'core/anatomy',
  'core/implant',
  'core/measure',
  'core/drilling',
  'core/seating',
  'core/restoration',
  'core/plan',
  'core/spread',
  'core/teaching',
  'solids',
  'words',
  'marks',
  'paper',
  'io',
  'worker',
  'state',
  'scene',
  'panels',
  'app',
];

const folder = (room) => `^src/${room}/`;
const anyOf = (rooms) => rooms.map(folder).join('|');

/** Rooms below one another in the list that still may not meet. */
const STRANGERS = [
  [
    'core/implant',
    'core/anatomy',
    'an implant shape knows no jaw, and a jaw knows no implant: they meet first in core/measure',
  ],
  [
    'panels',
    'scene',
    'a panel must work where there is no 3D at all: both draw from the same records and meet only in app',
  ],
];

/** Rooms that keep to fewer than what stands above them. */
const FRUGAL = [
  [
    'marks',
    ['core/(geometry|anatomy|implant|measure|plan)', 'words'],
    'a mark is drawn from what it is handed: it knows types of the core and the words, and no store, file or worker',
  ],
];

const upward = ROOMS.map((room, i) => ({
  name: `${room.replace('/', '-')}-imports-only-what-stands-above-it`,
  comment: `${room} may import only: ${[...ROOMS.slice(0, i), 'itself'].join(', ')}. The arrows point one way, so that the lower rooms can be read, tested and trusted alone.`,
  severity: 'error',
  from: { path: folder(room) },
  to: { path: anyOf([...ROOMS.slice(i + 1), 'cli']) },
})).filter((rule) => rule.to.path);

const strangers = STRANGERS.map(([from, to, reason]) => ({
  name: `${from.replace('/', '-')}-never-meets-${to.replace('/', '-')}`,
  comment: `${from} and ${to} never import each other: ${reason}.`,
  severity: 'error',
  from: { path: folder(from) },
  to: { path: folder(to) },
}));

const frugal = FRUGAL.map(([room, allowed, reason]) => ({
  name: `${room}-imports-only-what-it-is-allowed`,
  comment: `${room} may import only: ${allowed.join(', ')}, itself. Reason: ${reason}.`,
  severity: 'error',
  from: { path: folder(room) },
  to: { path: '^src/', pathNot: anyOf([...allowed, room]) },
}));

const BUILTIN = { dependencyTypes: ['core'] };
const NPM = ['npm', 'npm-dev', 'npm-optional', 'npm-peer', 'npm-bundled', 'npm-no-pkg', 'npm-unknown'];

/** @type {import('dependency-cruiser').IConfiguration} */
module.exports = {
  forbidden: [
    ...upward,
    ...strangers,
    ...frugal,
    {
      name: 'cli-imports-no-screen-and-no-state',
      comment:
        'The command line is a thin shell round the core: it may import core, solids, words, paper and io only.',
      severity: 'error',
      from: { path: folder('cli') },
      to: { path: '^src/', pathNot: '^src/(cli|core|solids|words|paper|io)/' },
    },
    {
      name: 'build-stands-apart',
      comment:
        'What the build adds to the page is run by vite under Node: it imports no room, and no room imports it.',
      severity: 'error',
      from: { path: folder('build') },
      to: { path: '^src/', pathNot: folder('build') },
    },
    {
      name: 'no-room-imports-the-build',
      comment: 'What the build adds to the page is run by vite under Node.',
      severity: 'error',
      from: { path: '^src/', pathNot: folder('build') },
      to: { path: folder('build') },
    },
    {
      name: 'every-file-has-a-room',
      comment:
        'A file in src stands in one of the rooms listed in .dependency-cruiser.cjs, or no rule would watch it.',
      severity: 'error',
      from: {},
      to: { path: '^src/', pathNot: `${anyOf(ROOMS)}|^src/(cli|build)/` },
    },
    {
      name: 'a-loose-file-imports-nothing',
      comment: 'A file in src that stands in no room may import nothing.',
      severity: 'error',
      from: { path: '^src/', pathNot: `${anyOf(ROOMS)}|^src/(cli|build)/` },
      to: {},
    },
    {
      name: 'core-runs-anywhere',
      comment: 'The core runs in Node, a worker and the browser alike: no node:* module.',
      severity: 'error',
      from: { path: '^src/(core|words)/' },
      to: BUILTIN,
    },
    {
      name: 'the-page-knows-no-node',
      comment: 'These rooms run in the browser: no node:* module.',
      severity: 'error',
      from: { path: '^src/(solids|paper|io|worker|state|marks|scene|panels|app)/' },
      to: BUILTIN,
    },
    {
      name: 'core-needs-no-package',
      comment:
        'The core is plain TypeScript; only core/plan may use zod, for the schema of a plan, and core/drilling/carve a polygon clipper, for what is drawn of a hole.',
      severity: 'error',
      from: { path: '^src/(core|words)/', pathNot: '^src/core/(plan/|drilling/carve)' },
      to: { dependencyTypes: NPM },
    },
    {
      name: 'core-plan-needs-only-zod',
      comment: 'The only package that core/plan may use is zod, for the schema of a plan.',
      severity: 'error',
      from: { path: '^src/core/plan/' },
      to: { dependencyTypes: NPM, pathNot: 'node_modules/zod/' },
    },
    {
      name: 'io-and-cli-know-no-screen',
      comment: 'Files and the command line work without React and without three.',
      severity: 'error',
      from: { path: '^src/(solids|paper|io|cli|worker)/' },
      to: { path: 'node_modules/(react|react-dom|three|@react-three)/' },
    },
    {
      name: 'panels-know-no-three',
      comment: 'Panels are plain React DOM, so that they work where there is no 3D.',
      severity: 'error',
      from: { path: '^src/(panels|marks|state)/' },
      to: { path: 'node_modules/(three|@react-three)/' },
    },
    {
      name: 'the-product-knows-no-tests',
      comment: 'Nothing in src may lean on the tests.',
      severity: 'error',
      from: { path: '^src/' },
      to: { path: '^tests/' },
    },
    {
      name: 'no-circles',
      comment: 'Two files that import each other (through values) cannot be read alone.',
      severity: 'error',
      from: { path: '^src/' },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'every-import-resolves',
      comment: 'An import that leads nowhere, or a package that package.json does not name.',
      severity: 'error',
      from: { path: '^src/' },
      to: { couldNotResolve: true, pathNot: '\\?' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '\\.css$' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
      extensions: ['.ts', '.tsx', '.js', '.json'],
    },
  },
};
