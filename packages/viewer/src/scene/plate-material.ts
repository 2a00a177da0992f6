import type { Site } from '@flathead/solver';
import { Color, DataTexture, type IUniform, LinearFilter, RGBAFormat, ShaderMaterial, Vector4 } from 'three';
import type { ColourScale } from '../buffers/colour-scale.ts';
import { BEYOND, HATCH, RAMP, rampBytes, TO_LIMIT, TO_LIMIT_BELOW } from '../buffers/ramp.ts';

const RAMP_SIZE = 256;
/** Rows of the texture of colours, from its first. */
const ROWS = [TO_LIMIT, TO_LIMIT_BELOW, BEYOND, RAMP];

/** Moves a vertex with the plate: `field` is deviation, d/dx, d/dy, and what is painted. */
const VERTEX_MOTION = /* glsl */ `
  attribute vec4 field;
  uniform float scale;
  vec3 moved(vec3 p) { return vec3(p.xy, p.z + scale * field.x); }
`;

const VERTEX = /* glsl */ `
  ${VERTEX_MOTION}
  varying vec3 vNormal;
  varying vec2 vPlan;
  varying float vPaint;
  varying float vFlat;
  void main() {
    vFlat = abs(normal.z);
    vec3 bent = normalize(vec3(-scale * field.yz, 1.0));
    vNormal = vFlat > 0.5 ? sign(normal.z) * bent : normal;
    vPlan = position.xy;
    vPaint = field.w;
    gl_Position = projectionMatrix * modelViewMatrix * vec4(moved(position), 1.0);
  }
`;

// Colours are those of the page, in sRGB from texture to screen; only their shading is computed.
const FRAGMENT = /* glsl */ `
  uniform sampler2D ramp;
  uniform vec3 base;
  uniform vec3 side;
  uniform vec3 hatch;
  uniform float painted;
  uniform float limit;     // as top where the field has none
  uniform float top;
  uniform float isoStep;
  uniform float everywhere;
  uniform float bothWays;
  uniform float pixelRatio;
  uniform vec4 siteGrid;   // centre of the first site, pitch
  uniform vec4 siteShape;  // columns, rows, half field
  varying vec3 vNormal;
  varying vec2 vPlan;
  varying float vPaint;
  varying float vFlat;

  float insideSite(vec2 p) {
    vec2 nearest = clamp(floor((p - siteGrid.xy) / siteGrid.zw + 0.5), vec2(0.0), siteShape.xy - 1.0);
    vec2 beyond = abs(p - siteGrid.xy - nearest * siteGrid.zw) - siteShape.zw;
    return step(max(beyond.x, beyond.y), 0.0);
  }

  void main() {
    float lit = dot(normalize(vNormal), normalize(vec3(-0.45, -0.5, 0.74)));
    vec3 colour = mix(side, base, vFlat) * (0.78 + 0.24 * lit);
    if (painted > 0.5 && vFlat > 0.5) {
      float site = max(everywhere, insideSite(vPlan));
      float size = bothWays > -0.5 ? abs(vPaint) : max(vPaint, 0.0);
      bool limited = top > limit;
      bool beyond = limited && size > limit;
      float share = beyond ? (size - limit) / (top - limit) : size / limit;
      float row = beyond ? 2.0 : !limited ? 3.0 : bothWays > 0.5 && vPaint < 0.0 ? 1.0 : 0.0;
      vec2 place = vec2((min(share, 1.0) * ${RAMP_SIZE - 1}.0 + 0.5) / ${RAMP_SIZE}.0, (row + 0.5) / ${ROWS.length}.0);
      vec3 paint = mix(base, texture2D(ramp, place).rgb, site > 0.5 ? 1.0 : 0.45);
      float level = vPaint / isoStep;
      float line = abs(fract(level - 0.5) - 0.5) / max(fwidth(level), 1e-6);
      // Lines that would run together are left out, and those under the hatch.
      float isLine = (1.0 - smoothstep(0.35, 1.15, line / pixelRatio)) * (1.0 - smoothstep(0.1, 0.25, fwidth(level) * pixelRatio));
      vec3 lineColour = !limited && share > 0.55 ? vec3(1.0) : vec3(0.07, 0.13, 0.15);
      if (!beyond || site < 0.5) paint = mix(paint, lineColour, isLine * mix(0.22, 0.5, site));
      if (beyond && site > 0.5) {
        // Where the senses are told apart, the strokes lean the other way towards the board.
        float lean = bothWays > 0.5 && vPaint < 0.0 ? -1.0 : 1.0;
        float diagonal = (gl_FragCoord.x + lean * gl_FragCoord.y) / (8.0 * pixelRatio);
        float stripe = abs(fract(diagonal) - 0.5) * 2.0;
        float edge = fwidth(diagonal) * 2.0;
        paint = mix(paint, hatch, smoothstep(0.7 - edge, 0.7 + edge, stripe));
      }
      colour = paint * (0.93 + 0.07 * lit);
    }
    gl_FragColor = vec4(colour, 1.0);
  }
`;

/** Uniforms that all parts of the head share, by reference. */
export interface PlateUniforms {
  readonly scale: IUniform<number>;
  readonly ramp: IUniform<DataTexture>;
  readonly limit: IUniform<number>;
  /** Where the colours end; with the limit where the field has none. */
  readonly top: IUniform<number>;
  readonly isoStep: IUniform<number>;
  /** 1 where the colours mean as much beside the sites as in them. */
  readonly everywhere: IUniform<number>;
  /** 1 where positive and negative have ramps of their own, 0 where they share one, -1 where negative counts as none. */
  readonly bothWays: IUniform<number>;
  readonly pixelRatio: IUniform<number>;
  readonly siteGrid: IUniform<Vector4>;
  readonly siteShape: IUniform<Vector4>;
}

/** @param scale factor on the deflection, changed in place while it is animated */
export function plateUniforms(scale: IUniform<number>): PlateUniforms {
  const rows = Uint8Array.from(ROWS.flatMap((colours) => [...rampBytes(RAMP_SIZE, colours)]));
  const ramp = new DataTexture(rows, RAMP_SIZE, ROWS.length, RGBAFormat);
  ramp.minFilter = LinearFilter;
  ramp.magFilter = LinearFilter;
  ramp.needsUpdate = true;
  return {
    scale,
    ramp: { value: ramp },
    limit: { value: 1 },
    top: { value: 1 },
    isoStep: { value: 1 },
    everywhere: { value: 0 },
    bothWays: { value: 0 },
    pixelRatio: { value: 1 },
    siteGrid: { value: new Vector4(0, 0, 1, 1) },
    siteShape: { value: new Vector4(1, 1, 0, 0) },
  };
}

/** Tells the shader which values have which colours. */
export function setScale({ limit, top }: PlateUniforms, scale: ColourScale): void {
  limit.value = scale.limit ?? scale.top;
  top.value = scale.top;
}

/** Tells the shader where the sites are: a grid of equal fields. */
export function setSites({ siteGrid, siteShape }: PlateUniforms, sites: readonly Site[]): void {
  const [axisX, axisY] = ([0, 1] as const).map((axis) => {
    const places = sites.map(({ centre }) => centre[axis]);
    const count = 1 + Math.max(...sites.map(({ row, column }) => (axis === 0 ? column : row)));
    const first = Math.min(...places);
    return { first, count, pitch: count > 1 ? (Math.max(...places) - first) / (count - 1) : 1 };
  });
  const [width, height] = sites[0].field;
  siteGrid.value.set(axisX.first, axisY.first, axisX.pitch, axisY.pitch);
  siteShape.value.set(axisX.count, axisY.count, width / 2, height / 2);
}

/** Material of a part that moves with the plate; a painted one shows the field on its faces. */
export function plateMaterial(
  uniforms: PlateUniforms,
  { base, side, painted }: { readonly base: string; readonly side: string; readonly painted: boolean },
): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: {
      ...uniforms,
      base: { value: asShown(base) },
      side: { value: asShown(side) },
      hatch: { value: asShown(HATCH) },
      painted: { value: painted ? 1 : 0 },
    },
    polygonOffset: true,
    polygonOffsetFactor: 1,
    polygonOffsetUnits: 2,
  });
}

/** Material of lines on the plate. */
export function lineMaterial(
  scale: IUniform<number>,
  { colour, opacity, onTop = false }: { readonly colour: string; readonly opacity: number; readonly onTop?: boolean },
): ShaderMaterial {
  return new ShaderMaterial({
    vertexShader: `${VERTEX_MOTION} void main() { gl_Position = projectionMatrix * modelViewMatrix * vec4(moved(position), 1.0); }`,
    fragmentShader: 'uniform vec4 ink; void main() { gl_FragColor = ink; }',
    uniforms: { scale, ink: { value: new Vector4(...asShown(colour).toArray(), opacity) } },
    transparent: true,
    depthTest: !onTop,
    depthWrite: false,
  });
}

/** Components as written on the page, without conversion to linear light. */
function asShown(colour: string): Color {
  return new Color().setStyle(colour, 'srgb-linear');
}
