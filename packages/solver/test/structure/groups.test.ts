import { describe, expect, it } from 'vitest';
import type { PlateProblem } from '../../src/plate/plate-problem.ts';
import { advanceGroups, factorsOf, meshedOf, plateKey } from '../../src/structure/groups.ts';
import { onThree, requestOf, solved } from './solved.ts';

const loaded = (force: number): PlateProblem => ({ ...onThree, loads: [{ at: [7, -3], force }] });
const thicker = (force: number): PlateProblem => ({ ...loaded(force), section: { E: 66000, nu: 0.29, thickness: 9 } });
const request = (...problems: PlateProblem[]) => requestOf(problems[0], { problems });
const first = advanceGroups(null, request(loaded(10), thicker(10), loaded(-4)));

describe('cases in groups of the same section and foundations', () => {
  it('are solved as each alone on one mesh, in the order given', () => {
    const groups = advanceGroups(null, request(loaded(10), thicker(10), loaded(-4)));
    expect(groups.groups.size).toBe(2);
    expect(factorsOf(groups)).toHaveLength(2);
    const { meshed } = [...groups.groups.values()][0];
    expect(meshedOf(groups)).toBe(meshed);
    [loaded(10), thicker(10), loaded(-4)].forEach((problem, i) => {
      const { structure, solution, supports } = groups.cases[i];
      const alone = solved(problem, { meshed });
      expect([...solution.u]).toEqual([...alone.cases[0].u]);
      expect(structure.mesh).toBe(meshed.mesh);
      expect(structure.factor).toBe(groups.groups.get(plateKey(problem))!.structure.factor);
      expect(supports).toBe(groups.groups.get(plateKey(problem))!.supports);
    });
  });

  it('keep the factor of each group when a load changes, whichever group comes first', () => {
    const next = advanceGroups(first, request(thicker(3), loaded(5)));
    expect(next.cases[0].structure).toBe(first.cases[1].structure);
    expect(next.cases[1].structure).toBe(first.cases[0].structure);
    expect(next.cases[0].solution.u[9] / first.cases[1].solution.u[9]).toBeCloseTo(0.3, 9);
  });

  it('keep the mesh when all sections change', () => {
    const softer = { ...loaded(10), section: { E: 33000, nu: 0.29, thickness: 4.5 } };
    const next = advanceGroups(first, request(softer));
    expect(meshedOf(next)).toBe(meshedOf(first));
    // On points, statically determinate: half the modulus, twice the deflection.
    expect(next.cases[0].solution.u[9] / first.cases[0].solution.u[9]).toBeCloseTo(2, 9);
    const again = advanceGroups(next, request(loaded(10), thicker(10)));
    expect(meshedOf(again)).toBe(meshedOf(first));
  });

  it('are apart by foundations too', () => {
    const founded: PlateProblem = { ...loaded(10), foundations: [{ over: 'all', modulus: 1 }] };
    expect(plateKey(founded)).not.toBe(plateKey(loaded(10)));
    expect(plateKey(loaded(3))).toBe(plateKey(loaded(10)));
    expect(advanceGroups(null, request(founded, loaded(10))).groups.size).toBe(2);
  });

  it('all stretch in the plane if one of them does, since they share the mesh and its order', () => {
    const bonded: PlateProblem = {
      ...loaded(10),
      regions: [
        {
          shape: { rectangle: [20, 40] },
          section: {
            join: 'bonded',
            layers: [
              { E: 66000, nu: 0.29, thickness: 4.5, bottom: -2.25 },
              { E: 2e5, nu: 0.27, thickness: 3, bottom: 2.25 },
            ],
          },
        },
      ],
    };
    const alike = { ...bonded, regions: [{ ...bonded.regions![0], section: onThree.section }] };
    const { cases } = advanceGroups(null, request(alike, bonded));
    for (const { structure } of cases) expect(structure.inPlane).not.toBeNull();
    expect(advanceGroups(null, request(alike)).cases[0].structure.inPlane).toBeNull();
  });

  it('add up the times of all groups', () => {
    const both = advanceGroups(null, request(loaded(10), thicker(10)));
    for (const stage of ['assembly', 'factor', 'cases']) {
      const each = [...both.groups.values()].map(({ timings }) => timings[stage]);
      expect(both.timings[stage]).toBeCloseTo(each[0] + each[1], 9);
    }
  });
});
