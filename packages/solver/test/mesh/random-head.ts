import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { difference } from '../../src/geometry/boolean.ts';
import type { Point, Ring } from '../../src/geometry/point.ts';
import { shapeRing } from '../../src/geometry/ring.ts';
import type { MeshDomain } from '../../src/mesh/domain.ts';
import { type SizeField, type SizeSource, sizeField } from '../../src/mesh/size-field.ts';

/**
 * Seeded domain that looks like a probe head: body with openings, frame and window, ribs between and across the sites,
 * probe fields. Edges often coincide, or with `misses` miss each other by 1e-1 to 1e-9 mm. Every third
 * head is turned by some angle.
 */
export function randomHead(seed: number, misses = true): { readonly domain: MeshDomain; readonly size: SizeField } {
  const random = xoroshiro128plus(seed);
  const real = (min: number, max: number) => min + (max - min) * uniformFloat64(random);
  const whole = (min: number, max: number) => uniformInt(random, min, max);
  const maybe = (chance: number) => uniformFloat64(random) < chance;
  /** Mostly nothing; sometimes a gap or overlap of any size. */
  const miss = () => (!misses || maybe(0.5) ? 0 : (maybe(0.5) ? 1 : -1) * 10 ** -whole(1, 9));

  const [columns, rows] = [whole(1, 6), whole(1, 3)];
  const [px, py] = [real(8, 16), real(8, 16)];
  const field: Point = maybe(0.2) ? [px, py] : [real(0.3, 0.95) * px, real(0.3, 0.95) * py];
  const [spanX, spanY] = [columns * px, rows * py];
  const chord = 0.02;
  const rectangle = (x: number, y: number, width: number, height: number, corner = 0): Ring =>
    shapeRing({ rectangle: [width, height], centre: [x, y], corner }, { chord });
  const circle = (x: number, y: number, diameter: number): Ring =>
    shapeRing({ circle: diameter, centre: [x, y] }, { chord });
  const slanted = ([xa, ya]: Point, [xb, yb]: Point, width: number): Ring => {
    const length = Math.hypot(xb - xa, yb - ya);
    const [nx, ny] = [(-width * (yb - ya)) / length / 2, (width * (xb - xa)) / length / 2];
    const polygon: [number, number][] = [
      [xa - nx, ya - ny],
      [xb - nx, yb - ny],
      [xb + nx, yb + ny],
      [xa + nx, ya + ny],
    ];
    return shapeRing({ polygon }, { chord });
  };

  const [width, height] = [spanX + real(15, 40), spanY + real(15, 40)];
  const kind = whole(0, 3);
  const body: Ring =
    kind === 0
      ? circle(0, 0, Math.hypot(width, height))
      : kind === 1
        ? rectangle(0, 0, width, height, real(0, 0.5) * Math.min(width, height))
        : kind === 2
          ? cutCorners(width, height, real(0.02, 0.4) * Math.min(width, height))
          : rectangle(0, 0, width, height);

  const openings: Ring[] = [];
  const holes = whole(0, 6);
  for (let i = 0; i < holes; i++) {
    const [x, y] = [real(-0.5, 0.5) * width, real(-0.5, 0.5) * height];
    openings.push(maybe(0.6) ? circle(x, y, real(0.5, 6)) : rectangle(x, y, real(0.3, 8), real(0.3, 8)));
  }

  const regions: Ring[] = [];
  const window = [spanX + 2 * miss() + (maybe(0.5) ? 4 : 0), spanY + 2 * miss() + (maybe(0.5) ? 4 : 0)] as const;
  if (maybe(0.8)) {
    const margin = maybe(0.3) ? width : real(4, 12);
    regions.push(rectangle(miss(), miss(), window[0] + margin, window[1] + margin, maybe(0.3) ? 2 : 0));
    regions.push(rectangle(0, 0, window[0], window[1], maybe(0.3) ? real(0.2, 3) : 0));
    const gapX = maybe(0.5) ? px - field[0] : real(0.5, 3);
    for (let i = 1; i < columns; i++)
      if (maybe(0.7))
        regions.push(rectangle(i * px - spanX / 2 + miss(), 0, Math.max(gapX + miss(), 0.4), window[1] + 2 * miss()));
    for (let j = 1; j < rows; j++)
      if (maybe(0.5))
        regions.push(rectangle(miss(), j * py - spanY / 2, window[0] + 2 * miss(), Math.max(py - field[1], 0.4)));
    if (maybe(0.3))
      regions.push(
        slanted(
          [-spanX / 2, real(-1, 1) * spanY],
          [spanX / 2 + 5, maybe(0.3) ? real(-1, 1) : real(-1, 1) * spanY],
          real(0.5, 4),
        ),
      );
  }
  if (maybe(0.2)) regions.push(circle(real(-1, 1) * width, real(-1, 1) * height, real(2, 30)));
  for (let i = 0; i < columns; i++)
    for (let j = 0; j < rows; j++)
      regions.push(
        rectangle((i + 0.5) * px - spanX / 2, (j + 0.5) * py - spanY / 2, field[0] + 2 * miss(), field[1] + 2 * miss()),
      );

  const base = real(0.03, 0.1) * Math.max(width, height);
  const sources: SizeSource[] = openings.map((ring) => ({ ring, size: base / 2 }));
  for (let i = 0; i < 4; i++)
    sources.push({ at: [real(-0.5, 0.5) * width, real(-0.5, 0.5) * height], size: base / whole(1, 6) });
  const size = sizeField({ base, sources, growth: 0.25 });
  const domain = { outline: difference([body], openings), regions };
  if (seed % 3 > 0) return { domain, size };

  // Turned, edges that coincided do so but for rounding.
  const turn = real(-Math.PI, Math.PI);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const turned = (ring: Ring): Ring => ring.map(([x, y]) => [c * x - s * y, s * x + c * y] as const);
  return {
    domain: { outline: domain.outline.map(turned), regions: regions.map(turned) },
    size: (x, y) => size(c * x + s * y, c * y - s * x),
  };
}

function cutCorners(width: number, height: number, cut: number): Ring {
  const [w, h] = [width / 2, height / 2];
  return [[-w + cut, -h], [w - cut, -h], [w, -h + cut], [w, h - cut], [w - cut, h], [-w + cut, h], [-w, h - cut], [-w, -h + cut]]; // biome-ignore format: eight corners
}
