import { strToU8, zipSync } from 'fflate';
import type { Model, ModelPart } from '../solids/model.ts';
import type { ModelWords } from '../words/sayModel.ts';
import { hexOf, paintOf } from './paint.ts';

/** Parts of the package by the 3MF core specification and the open packaging conventions. */
const MODEL_PATH = '3D/3dmodel.model';
const TYPES = `<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>`;
const RELATIONS = `<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Target="/${MODEL_PATH}" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>`;

/** The package carries no time of day, so that the same plan gives the same bytes. */
const NO_TIME = new Date(1980, 0, 1);

const ENTITIES: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => ENTITIES[c]);

/** A coordinate to a millionth of a millimetre, which tells all numbers of single precision apart here. */
const coordinate = (v: number): string => String(Math.round(v * 1e6) / 1e6);

function vertices(positions: Float64Array): string {
  const out: string[] = [];
  for (let i = 0; i < positions.length; i += 3) {
    const [x, y, z] = [positions[i], positions[i + 1], positions[i + 2]].map(coordinate);
    out.push(`<vertex x="${x}" y="${y}" z="${z}"/>`);
  }
  return out.join('\n');
}

/** Triangles of a part; `paint` is its place among the base materials of resource 1. */
function trianglesOf(t: Uint32Array, { from, count }: ModelPart, paint: number): string {
  const out: string[] = [];
  for (let i = 3 * from; i < 3 * (from + count); i += 3)
    out.push(`<triangle v1="${t[i]}" v2="${t[i + 1]}" v3="${t[i + 2]}" pid="1" p1="${paint}"/>`);
  return out.join('\n');
}

function modelXml({ mesh, parts }: Model, { title, caution }: ModelWords): string {
  const materials = parts
    .map(({ name }) => `<base name="${name}" displaycolor="${hexOf(paintOf(name))}"/>`)
    .join('');
  const triangles = parts.map((part, i) => trianglesOf(mesh.triangles, part, i)).join('\n');
  return `<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
<metadata name="Title">${escaped(title)}</metadata>
<metadata name="Application">Ridgewright</metadata>
<metadata name="Description">${escaped(caution)}</metadata>
<resources>
<basematerials id="1">${materials}</basematerials>
<object id="2" type="model" name="${escaped(title)}" pid="1" pindex="0"><mesh>
<vertices>
${vertices(mesh.positions)}
</vertices>
<triangles>
${triangles}
</triangles>
</mesh></object>
</resources>
<build><item objectid="2"/></build>
</model>
`;
}

/** A 3MF package of one object, millimetres, each surface with the colour of what it belongs to. */
export function threeMfOf(model: Model, words: ModelWords): Uint8Array<ArrayBuffer> {
  return zipSync(
    {
      '[Content_Types].xml': strToU8(TYPES),
      '_rels/.rels': strToU8(RELATIONS),
      [MODEL_PATH]: strToU8(modelXml(model, words)),
    },
    { mtime: NO_TIME },
  );
}
