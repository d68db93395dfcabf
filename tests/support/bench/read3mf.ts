import { BufferGeometry, type Mesh } from 'three';
import { ThreeMFLoader } from 'three/addons/loaders/3MFLoader.js';

/** A package as three has it: loose corners of all its objects, the names and the colours it found. */
export interface Read3mf {
  readonly points: number[];
  readonly names: string[];
  readonly colours: number;
}

declare global {
  interface Window {
    read3mf?: (base64: string) => Read3mf;
  }
}

window.read3mf = (base64) => {
  const bytes = Uint8Array.from(atob(base64), (c) => c.charCodeAt(0));
  const group = new ThreeMFLoader().parse(bytes.buffer);
  const points: number[] = [];
  const names: string[] = [];
  const colours = new Set<string>();
  group.traverse((one) => {
    const { geometry, material, name } = one as Mesh;
    if (name !== '') names.push(name);
    if (!(geometry instanceof BufferGeometry)) return;
    const loose = geometry.index ? geometry.toNonIndexed() : geometry;
    for (const v of loose.getAttribute('position').array) points.push(v);
    for (const m of [material].flat())
      if ('color' in m) colours.add(String((m.color as { getHexString: () => string }).getHexString()));
  });
  return { points, names, colours: colours.size };
};
