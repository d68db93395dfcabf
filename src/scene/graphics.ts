export interface Graphics {
  /** Whether this browser draws WebGL 2. */
  readonly present: boolean;
  /** It draws, but without a graphics processor: lightly is the only way that keeps up with a hand. */
  readonly software: boolean;
}

const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** What this browser can draw. Asks a canvas of its own and gives the context back at once. */
export function graphicsHere(): Graphics {
  try {
    const gl = document.createElement('canvas').getContext('webgl2');
    if (!gl) return { present: false, software: false };
    const names = gl.getExtension('WEBGL_debug_renderer_info');
    const name: unknown = gl.getParameter(names ? names.UNMASKED_RENDERER_WEBGL : gl.RENDERER);
    gl.getExtension('WEBGL_lose_context')?.loseContext();
    return { present: true, software: SOFTWARE.test(String(name)) };
  } catch {
    return { present: false, software: false };
  }
}
