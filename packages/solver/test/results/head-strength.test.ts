import { describe, expect, it } from 'vitest';
import type { HeadModel } from '../../src/model/head-model.ts';
import { unitAreaStrength } from '../../src/results/weibull.ts';
import { solveHead } from '../../src/solve-head.ts';
import { twoByTwo } from '../model/two-by-two.ts';

const frameMetal = { E: 200_000, nu: 0.27, kind: 'metal' as const, strength: 900 };
const judged: HeadModel = {
  ...twoByTwo,
  materials: { 'stainless-17-4': frameMetal },
  limits: { bow: 0.03, strengthFactor: 3, failureProbability: 1e-6 },
};
const solved = (model: HeadModel) => solveHead(model).result;
const criterion = (result: ReturnType<typeof solved>, name: string) =>
  result.verdict.criteria.find((verdict) => verdict.criterion === name);

describe('strength of a head', () => {
  const result = solved(judged);
  const [{ strength }] = result.cases;
  const [body, frame] = strength!.parts;

  it('judges the ceramic body by tension and the metal frame by von Mises', () => {
    expect(body).toMatchObject({ part: 'body', material: 'alumina-96', measure: 'principal', strength: 300 });
    expect(frame).toMatchObject({ part: 'frame', measure: 'von Mises', strength: 900, failureProbability: null });
    for (const part of [body, frame]) expect(part.factor).toBeCloseTo(part.strength! / part.stress, 12);
    expect(body.failureProbability).toBeGreaterThan(0);
    const least = Math.min(body.factor!, frame.factor!);
    expect(criterion(result, 'strength')).toMatchObject({ value: least, bound: 'least', outcome: 'pass' });
    expect(criterion(result, 'strength')!.error).toBeGreaterThan(0);
    expect(criterion(result, 'failureProbability')!.value).toBe(body.failureProbability);
    expect(result.verdict.remarks.filter((remark) => /judged/.test(remark))).toEqual([]);
  });

  it('gives the tension of the body node by node, no more than the largest and nought where it is not', () => {
    const { bodyTension } = strength!;
    expect(Math.max(...bodyTension)).toBeCloseTo(body.stress, 12);
    expect(bodyTension.length).toBe(result.mesh.x.length);
    const wide = solved({
      ...judged,
      frame: { ...judged.frame!, outer: { rectangle: [70, 60] } },
    });
    wide.mesh.x.forEach((x, node) => {
      if (Math.abs(x) > 27) expect(wide.cases[0].strength!.bodyTension[node]).toBe(0);
    });
  });

  it('goes with the load: twice the preload is half the factor and 2^m the risk', () => {
    const { probes } = judged.sites;
    const twice = solved({
      ...judged,
      sites: { ...judged.sites, probes: { ...probes, preload: 2 * probes.preload } },
    });
    const [more] = twice.cases[0].strength!.parts;
    expect(more.factor! / body.factor!).toBeCloseTo(0.5, 9);
    const risk = (p: number) => -Math.log1p(-p);
    expect(risk(more.failureProbability!) / risk(body.failureProbability!) / 2 ** 10).toBeCloseTo(1, 6);
  });

  it('is bounded by its largest stress over all of its surface', () => {
    const one = unitAreaStrength({ strength: 300, is: 'mean', modulus: 10 });
    // Two faces and the edge of a body of 52 x 46 x 4 mm, both principal stresses.
    const surface = 2 * (2 * 52 * 46 + 2 * (52 + 46) * 4);
    expect(body.failureProbability!).toBeLessThan(surface * (body.stress / one) ** 10);
  });

  it('is higher at hole edges than the gross stress, by the factor of the array at most', () => {
    const drilled = solved({
      ...judged,
      sites: {
        ...judged.sites,
        probes: { ...judged.sites.probes, holes: { pitch: 0.3, diameter: 0.18, pattern: 'square' } },
      },
    });
    const [peak] = drilled.cases[0].strength!.parts;
    expect(peak.near).toMatch(/^[AB][12]$/);
    // mu = 0.4: between 3.19 all round and 8.3 in shear.
    expect(peak.stress / peak.gross).toBeGreaterThan(3.1);
    expect(peak.stress / peak.gross).toBeLessThan(8.4);
    expect(peak.factor!).toBeLessThan(body.factor! / 2);
  });

  it('is left out of live answers, and judged by no number where the material gives none', () => {
    const live = solveHead(judged, { quality: 'live' }).result;
    expect(live.cases[0].strength).toBeNull();
    expect(criterion(live, 'strength')).toBeUndefined();
    expect(solveHead(twoByTwo, { strength: 'when judged' }).result.cases[0].strength).toBeNull();
    expect(solveHead(judged, { strength: 'when judged' }).result.cases[0].strength).not.toBeNull();

    const unknown = solved({ ...judged, materials: {} });
    expect(unknown.cases[0].strength!.parts[1]).toMatchObject({ strength: null, factor: null });
    expect(unknown.verdict.remarks).toContainEqual(expect.stringMatching(/frame is not judged.*"stainless-17-4"/));
    expect(criterion(unknown, 'strength')!.value).toBe(unknown.cases[0].strength!.parts[0].factor);

    const plain = { E: 320_000, nu: 0.22 };
    const silent = solved({ ...judged, materials: { 'alumina-96': plain, 'stainless-17-4': plain } });
    expect(criterion(silent, 'strength')).toBeUndefined();
    expect(silent.verdict.remarks.filter((remark) => /not judged/.test(remark))).toHaveLength(2);
  });

  it('takes a material that does not say what it is as brittle', () => {
    const { kind: _, ...untold } = frameMetal;
    const brittle = solved({ ...judged, materials: { 'stainless-17-4': untold } });
    expect(brittle.cases[0].strength!.parts[1].measure).toBe('principal');
    expect(brittle.verdict.remarks).toContainEqual(expect.stringMatching(/frame is judged as brittle/));
  });

  it('says so when no part is ceramic, and nothing unless asked', () => {
    const metal = { ...frameMetal };
    const both = solved({ ...judged, materials: { 'alumina-96': metal, 'stainless-17-4': metal } });
    expect(both.verdict.remarks).toContainEqual(expect.stringMatching(/neither body nor frame is ceramic/));
    expect(solved(twoByTwo).verdict.remarks.filter((remark) => /judged|strength/.test(remark))).toEqual([]);
  });

  it('keeps body and frame apart in a level frame, whose layers lie on both faces', () => {
    const level: HeadModel = {
      ...judged,
      frame: { ...judged.frame!, side: 'level', join: 'bonded', material: 'alumina-96' },
    };
    const [inner, outer] = solved(level).cases[0].strength!.parts;
    expect([inner.part, outer.part]).toEqual(['body', 'frame']);
    for (const part of [inner, outer]) expect(part.stress).toBeGreaterThan(0);
    expect(outer.failureProbability).toBeGreaterThan(0);
  });
});
