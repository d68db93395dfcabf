import { execFile } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { ROOT } from '../support/scan.ts';

/** A small house of its own, with one bad import per file. Source of the rule: the list of rooms in DEVELOPERS.md. */
const HOUSE: Record<string, string> = {
  'package.json': '{ "name": "house", "type": "module", "dependencies": { "three": "1.0.0" } }',
  'node_modules/three/package.json': '{ "name": "three", "version": "1.0.0", "main": "index.js" }',
  'node_modules/three/index.js': 'export class Vector3 {}',
  'src/core/geometry/vec.ts': 'export interface Vec { x: number }\nexport const zero: Vec = { x: 0 };',
  'src/core/anatomy/jaw.ts':
    "import type { Vec } from '../geometry/vec.ts';\nexport interface Jaw { at: Vec }",
  'src/core/implant/shape.ts': 'export interface Shape { r: number }',
  'src/core/measure/walls.ts':
    "import type { Jaw } from '../anatomy/jaw.ts';\nimport type { Shape } from '../implant/shape.ts';\nexport type Walls = Jaw & Shape;",
  'src/scene/Stage.tsx': 'export const Stage = () => null;',
  'src/panels/Table.tsx': 'export const Table = () => null;',

  'src/core/geometry/bad-upward-type.ts':
    "import type { Walls } from '../measure/walls.ts';\nexport type Bad = Walls;",
  'src/core/geometry/bad-upward-value.ts':
    "import { Table } from '../../panels/Table.tsx';\nexport const bad = Table;",
  'src/core/geometry/bad-upward-again.ts': "export type { Jaw } from '../anatomy/jaw.ts';",
  'src/core/implant/bad-stranger.ts': "import type { Jaw } from '../anatomy/jaw.ts';\nexport type Bad = Jaw;",
  'src/core/anatomy/bad-stranger.ts':
    "import type { Shape } from '../implant/shape.ts';\nexport type Bad = Shape;",
  'src/panels/BadStranger.tsx':
    "import type { Stage } from '../scene/Stage.tsx';\nexport type Bad = typeof Stage;",
  'src/scene/BadStranger.tsx': "import { Table } from '../panels/Table.tsx';\nexport const Bad = Table;",
  'src/core/measure/bad-node.ts': "import { readFileSync } from 'node:fs';\nexport const bad = readFileSync;",
  'src/core/measure/bad-package.ts': "import type { Vector3 } from 'three';\nexport type Bad = Vector3;",
  'src/cli/bad-state.ts': "import type { S } from '../state/store.ts';\nexport type Bad = S;",
  'src/state/store.ts': 'export interface S { n: number }',
  'src/marks/Glyph.tsx': 'export const Glyph = () => null;',
  'src/scene/Marked.tsx': "import { Glyph } from '../marks/Glyph.tsx';\nexport const Marked = Glyph;",
  'src/panels/Marked.tsx': "import { Glyph } from '../marks/Glyph.tsx';\nexport const Marked = Glyph;",
  'src/marks/bad-state.ts': "import type { S } from '../state/store.ts';\nexport type Bad = S;",
  'src/loose/bad-room.ts': "import { zero } from '../core/geometry/vec.ts';\nexport const bad = zero;",
};

interface Violation {
  from: string;
  rule: string;
}

let house = '';
let found: Violation[] = [];
let report = '';

function cruise(type: string): Promise<string> {
  const binary = join(ROOT, 'node_modules/dependency-cruiser/bin/dependency-cruise.mjs');
  const args = [binary, 'src', '--config', join(ROOT, '.dependency-cruiser.cjs'), '--output-type', type];
  return new Promise((done) => {
    execFile(process.execPath, args, { cwd: house }, (_, stdout) => done(stdout));
  });
}

beforeAll(async () => {
  house = mkdtempSync(join(tmpdir(), 'ridgewright-layers-'));
  for (const [path, text] of Object.entries(HOUSE)) {
    mkdirSync(dirname(join(house, path)), { recursive: true });
    writeFileSync(join(house, path), text);
  }
  const { summary } = JSON.parse(await cruise('json')) as {
    summary: { violations: { from: string; rule: { name: string } }[] };
  };
  found = summary.violations.map(({ from, rule }) => ({
    from,
    rule: rule.name,
  }));
  report = (await cruise('err-long')).replace(/\s+/g, ' ');
}, 60_000);

afterAll(() => rmSync(house, { recursive: true, force: true }));

describe('the layer rule', () => {
  it.each([
    ['src/core/geometry/bad-upward-type.ts', 'core-geometry-imports-only-what-stands-above-it'],
    ['src/core/geometry/bad-upward-value.ts', 'core-geometry-imports-only-what-stands-above-it'],
    ['src/core/geometry/bad-upward-again.ts', 'core-geometry-imports-only-what-stands-above-it'],
    ['src/core/implant/bad-stranger.ts', 'core-implant-never-meets-core-anatomy'],
    ['src/core/anatomy/bad-stranger.ts', 'core-anatomy-imports-only-what-stands-above-it'],
    ['src/panels/BadStranger.tsx', 'panels-never-meets-scene'],
    ['src/scene/BadStranger.tsx', 'scene-imports-only-what-stands-above-it'],
    ['src/core/measure/bad-node.ts', 'core-runs-anywhere'],
    ['src/core/measure/bad-package.ts', 'core-needs-no-package'],
    ['src/cli/bad-state.ts', 'cli-imports-no-screen-and-no-state'],
    ['src/marks/bad-state.ts', 'marks-imports-only-what-it-is-allowed'],
    ['src/loose/bad-room.ts', 'a-loose-file-imports-nothing'],
  ])('catches %s', (from, rule) => {
    expect(found).toContainEqual({ from, rule });
  });

  it('lets every good import pass', () => {
    expect(found.filter(({ from }) => !/bad/i.test(from))).toEqual([]);
  });

  it('gives the reason in its message', () => {
    expect(report).toContain('core/geometry may import only: itself');
    expect(report).toContain('an implant shape knows no jaw');
  });
});
