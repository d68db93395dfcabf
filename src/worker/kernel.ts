import Module from 'manifold-3d';
import wasm from 'manifold-3d/manifold.wasm?url';
import type { Kernel } from '../solids/shelf.ts';

let kernel: Promise<Kernel> | null = null;

/** The solid modeller, loaded when it is first wanted. */
export async function loadedKernel(): Promise<Kernel> {
  kernel ??= Module({ locateFile: () => wasm }).then((top) => {
    top.setup();
    return top;
  });
  return kernel;
}
