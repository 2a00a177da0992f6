/** Renderers that draw without a graphics processor. */
const SOFTWARE = /swiftshader|llvmpipe|softpipe|software|basic render/i;

/** What the browser draws in three dimensions with; `null` = it cannot. */
export function webglRenderer(): 'hardware' | 'software' | null {
  try {
    const context = document.createElement('canvas').getContext('webgl2');
    if (context === null) return null;
    const told = context.getExtension('WEBGL_debug_renderer_info');
    const name = String(context.getParameter(told?.UNMASKED_RENDERER_WEBGL ?? context.RENDERER));
    context.getExtension('WEBGL_lose_context')?.loseContext();
    return SOFTWARE.test(name) ? 'software' : 'hardware';
  } catch {
    return null;
  }
}
