import { type Affine, after, IDENTITY } from './curve.ts';

const STEP = /\s*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^)]*)\)\s*,?/gy;

/** The map of a transform attribute (SVG 1.1, 7.6); `null` where it is none. */
export function svgMap(text: string): Affine | null {
  let map = IDENTITY;
  let end = 0;
  STEP.lastIndex = 0;
  for (let match = STEP.exec(text); match !== null; match = STEP.exec(text)) {
    end = STEP.lastIndex;
    const numbers =
      match[2].trim() === ''
        ? []
        : match[2]
            .trim()
            .split(/[\s,]+/)
            .map(Number);
    const step = numbers.every(Number.isFinite) ? stepOf(match[1], numbers) : null;
    if (step === null) return null;
    map = after(map, step);
  }
  return text.slice(end).trim() === '' ? map : null;
}

function stepOf(name: string, n: readonly number[]): Affine | null {
  const angle = ((n[0] ?? 0) * Math.PI) / 180;
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  switch (name) {
    case 'matrix':
      return n.length === 6 ? [n[0], n[1], n[2], n[3], n[4], n[5]] : null;
    case 'translate':
      return n.length === 1 || n.length === 2 ? [1, 0, 0, 1, n[0], n[1] ?? 0] : null;
    case 'scale':
      return n.length === 1 || n.length === 2 ? [n[0], 0, 0, n[1] ?? n[0], 0, 0] : null;
    case 'rotate': {
      if (n.length !== 1 && n.length !== 3) return null;
      const [x, y] = [n[1] ?? 0, n[2] ?? 0];
      return [c, s, -s, c, x - c * x + s * y, y - s * x - c * y];
    }
    case 'skewX':
      return n.length === 1 ? [1, 0, Math.tan(angle), 1, 0, 0] : null;
    default:
      return n.length === 1 ? [1, Math.tan(angle), 0, 1, 0, 0] : null;
  }
}
