import { describe, expect, it } from 'vitest';
import { listedColumns } from '../../src/exchange/listed-columns.ts';
import { readProbeList } from '../../src/exchange/probe-list.ts';

describe('columns of a list', () => {
  it('have their titles, and are read by them where a reader does not know them', () => {
    const text = 'Build 7\nA (mm),B (mm),P,Q\n0,0,0.05,0.09\n1,0,0.05,0.09\n';
    expect(listedColumns(text).map(({ name }) => name)).toEqual(['A (mm)', 'B (mm)', 'P', 'Q']);
    const columns = { x: 'A (mm)', y: 'B (mm)', force: 'Q' };
    expect(readProbeList(text, { columns }).read.sites[0].probes[0]).toContain(0.09);
  });

  it('have numbers where there are no titles, or two alike', () => {
    expect(listedColumns('0;0,5;7\n1;0,5;8\n')).toEqual([
      { name: '1', label: '1: 0' },
      { name: '2', label: '2: 0,5' },
      { name: '3', label: '3: 7' },
    ]);
    expect(listedColumns('x,y,f,f\n0,0,1,2\n').map(({ name }) => name)).toEqual(['x', 'y', '3', '4']);
    const columns = { x: '1', y: '2', force: '4' };
    expect(readProbeList('x,y,f,f\n0,0,1,2\n', { columns }).read.sites[0].probes[0]).toContain(2);
  });
});
