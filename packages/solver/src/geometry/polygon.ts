import { Fault } from '../fault/fault.ts';
import type { Point, Ring } from './point.ts';
import { extent, ringArea } from './region.ts';
import { selfContact } from './self-contact.ts';

/** Corners closer than this over the extent count as one. */
const SAME = 1e-9;

/**
 * Counter-clockwise ring of a polygon given in either sense.
 *
 * @throws Fault BAD_SHAPE when it crosses or touches itself, repeats a corner, or encloses no area
 */
export function polygonRing(corners: readonly Point[], path: string): Ring {
  const refuse = (message: string, at: string, details: Readonly<Record<string, unknown>>): never => {
    throw new Fault('BAD_SHAPE', message, at, details);
  };
  if (corners.length < 3)
    refuse(`A polygon of ${corners.length} corners encloses nothing; give three or more.`, path, {
      value: corners.length,
      expected: '3 or more corners',
      remedy: 'add corners',
    });
  const bad = corners.findIndex(([x, y]) => !Number.isFinite(x) || !Number.isFinite(y));
  if (bad >= 0)
    refuse(`Corner ${bad + 1} is at [${corners[bad]}]; coordinates are finite numbers in mm.`, `${path}.${bad}`, {
      value: corners[bad],
      expected: 'two finite numbers',
      remedy: 'correct the corner',
    });

  const { min, max } = extent([corners]);
  const same = SAME * Math.max(max[0] - min[0], max[1] - min[1]);
  corners.forEach(([x, y], i) => {
    const next = (i + 1) % corners.length;
    const [xn, yn] = corners[next];
    if (Math.hypot(xn - x, yn - y) > same) return;
    const again = next === 0 ? i : next;
    refuse(
      `Corner ${again + 1} at [${corners[again]}] repeats ${next === 0 ? 'the first' : 'the one before'}; remove it${next === 0 ? ': a polygon closes by itself.' : '.'}`,
      `${path}.${again}`,
      { where: corners[again], value: corners[again], expected: 'corners apart from each other', remedy: 'remove it' },
    );
  });

  const contact = selfContact(corners);
  if (contact !== undefined) {
    const [i, j] = contact.edges;
    refuse(
      `Edge ${i + 1} of the outline ${contact.kind} edge ${j + 1} near [${contact.at.map((c) => Number(c.toPrecision(6)))}]; reorder or move the corners so that the outline meets itself nowhere.`,
      `${path}.${i}`,
      {
        where: contact.at,
        value: [i, j],
        expected: 'an outline that does not cross or touch itself',
        remedy: 'reorder or move the corners',
      },
    );
  }

  const signed = ringArea(corners);
  const smallest = SAME * (max[0] - min[0] + max[1] - min[1]) ** 2;
  if (!(Math.abs(signed) > smallest))
    refuse(`The polygon encloses ${Math.abs(signed)} mm2: its corners lie on a line.`, path, {
      where: corners[0],
      value: Math.abs(signed),
      expected: 'an area above zero',
      remedy: 'move a corner off the line',
    });
  return signed > 0 ? corners : [...corners].reverse();
}
