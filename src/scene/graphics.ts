/** Whether this browser draws WebGL 2. Asks a canvas of its own and gives the context back at once. */
export function drawsWebGL(): boolean {
  try {
    const gl = document.createElement('canvas').getContext('webgl2');
    gl?.getExtension('WEBGL_lose_context')?.loseContext();
    return gl !== null;
  } catch {
    return false;
  }
}
