import { describe, expect, it } from 'vitest';
import { compileHead } from '../../src/model/compile.ts';
import { checkHeadModel } from '../../src/model/read.ts';
import { faultOf } from './fault-of.ts';
import { altered, twoByTwo } from './two-by-two.ts';

const compileFault = (changes: Readonly<Record<string, unknown>>) =>
  faultOf(() => compileHead(checkHeadModel(altered(twoByTwo, changes))));

const rib = (rib: object) => ({ 'frame.ribs': [{ between: 'rows', width: 1 }, rib] });
const at = (...points: [number, number][]) => ({
  fasteners: points.map((point, i) => ({ name: `F${i + 1}`, at: point, screw: 'M2.5' })),
});

const wafer = (diameter: number) => ({ wafer: { diameter, edge: 3 } });

describe('compileHead refuses', () => {
  it.each([
    [
      'an outline that crosses itself',
      {
        'body.outline': {
          polygon: [
            [-26, -23],
            [26, 23],
            [26, -23],
            [-26, 23],
          ],
        },
      },
      'BAD_SHAPE',
      'body.outline.polygon.0',
      /crosses edge/,
    ],
    [
      'an outline of no area',
      {
        'body.outline': {
          polygon: [
            [-26, 0],
            [0, 0],
            [26, 0],
          ],
        },
      },
      'BAD_SHAPE',
      'body.outline.polygon.2',
      /fold|line/,
    ],
    [
      'an outline closed by hand',
      {
        'body.outline': {
          polygon: [
            [-26, -23],
            [26, -23],
            [26, 23],
            [-26, 23],
            [-26, -23],
          ],
        },
      },
      'BAD_SHAPE',
      'body.outline.polygon.4',
      /closes by itself/,
    ],
    [
      'a corner radius that does not fit',
      { 'body.outline': { rectangle: [52, 46], corner: 24 } },
      'BAD_SHAPE',
      'body.outline',
      /0 to 23 mm/,
    ],
    [
      'an opening off the body',
      { 'body.openings': [{ circle: 3, centre: [60, 0] }] },
      'OUTSIDE',
      'body.openings.0',
      /cuts nothing/,
    ],
    [
      'openings that cut the body in two',
      { frame: undefined, 'body.openings': [{ rectangle: [2, 60] }] },
      'DISCONNECTED',
      'body.openings',
      /2 pieces/,
    ],
    [
      'a window beyond the frame',
      { 'frame.window': { rectangle: [60, 28] } },
      'OUTSIDE',
      'frame.window',
      /beyond its outer edge/,
    ],
    [
      'a window that cuts the frame',
      { 'frame.window': { rectangle: [52, 28] } },
      'DISCONNECTED',
      'frame.window',
      /leaves 2 pieces/,
    ],
    [
      'a gap between body and frame',
      { 'body.outline': { rectangle: [29, 27], corner: 2 } },
      'DISCONNECTED',
      'frame',
      /gap of 0\.5\d* mm.*reach onto the body/,
    ],
    [
      'an unknown body material',
      { 'body.material': 'alumina' },
      'UNKNOWN_MATERIAL',
      'body.material',
      /Did you mean "alumina-96" or/,
    ],
    [
      'an unknown frame material',
      { 'frame.material': 'unobtainium' },
      'UNKNOWN_MATERIAL',
      'frame.material',
      /Known are alumina-99.5/,
    ],
    [
      'sites off the body',
      { 'body.outline': { rectangle: [15, 46] } },
      'OUTSIDE',
      'sites',
      /site A1 at \[-6,5\] reaches beyond the body/,
    ],
    ['sites that overlap', { 'sites.probes.field': [13, 4] }, 'OVERLAP', 'sites.probes.field.0', /A1 and A2 overlap/],
    [
      'an opening in a site',
      { 'body.openings': [{ circle: 1, centre: [6, -5] }] },
      'OVERLAP',
      'body.openings.0',
      /site B2/,
    ],
    [
      'a frame over a site',
      { 'frame.window': { rectangle: [16, 28] } },
      'OVERLAP',
      'frame.window',
      /site A1.*Widen its window/,
    ],
    ['a rib over a site', rib({ between: 'columns', width: 8 }), 'OVERLAP', 'frame.ribs.1', /site A1/],
    [
      'a rib that ends outside the frame',
      rib({ from: [0, 0], to: [0, 30], width: 1 }),
      'OUTSIDE',
      'frame.ribs.1.to',
      /ends at \[0, 30\], outside the frame/,
    ],
    [
      'a rib that hangs in the air',
      { 'frame.ribs': [{ from: [0, -5], to: [0, 5], width: 1 }] },
      'OUTSIDE',
      'frame.ribs.0',
      /does not reach the frame/,
    ],
    [
      'a rib without extent',
      rib({ from: [0, 20], to: [0, 20], width: 1 }),
      'BAD_SHAPE',
      'frame.ribs.1.to',
      /begins and ends/,
    ],
    [
      'a rib between columns of one',
      { 'sites.columns': 1, ...rib({ between: 'columns', width: 1 }) },
      'OUT_OF_RANGE',
      'frame.ribs.1.between',
      /one only/,
    ],
    [
      'a gap that is not there',
      rib({ between: 'columns', width: 1, skip: [2] }),
      'OUT_OF_RANGE',
      'frame.ribs.1.skip.0',
      /there are 1 gaps/,
    ],
    [
      'a fastener off the head',
      { 'fasteners.2.at': [-40, -18] },
      'OUTSIDE',
      'fasteners.2.at',
      /F3 at \[-40,-18\] lies off the head/,
    ],
    [
      'a fastener in an opening',
      { frame: undefined, 'body.openings': [{ circle: 5, centre: [21, 18] }] },
      'OUTSIDE',
      'fasteners.1.at',
      /F2 .* lies in the opening of body.openings.0/,
    ],
    [
      'a fastener on a site',
      { 'fasteners.0.at': [-9, 5] },
      'OVERLAP',
      'fasteners.0.at',
      /F1 .* probe field of site A1/,
    ],
    [
      'fasteners in one place',
      { 'fasteners.3.at': [-21, 18] },
      'OVERLAP',
      'fasteners.3.at',
      /F1 and F4 are 0 mm apart/,
    ],
    [
      'fasteners that collide',
      { 'fasteners.3.at': [-18, 18] },
      'OVERLAP',
      'fasteners.3.at',
      /F1 and F4 are 3 mm apart.*need 4.18 mm/,
    ],
    [
      'a fastener without screw',
      { 'fasteners.1.screw': undefined },
      'SCHEMA',
      'fasteners.1.screw',
      /neither a screw nor a bearing/,
    ],
    [
      'a fastener without stiffness',
      { 'fasteners.1.screw': undefined, 'fasteners.1.bearing': 4 },
      'SCHEMA',
      'fasteners.1.screw',
      /neither a screw nor a stiffness/,
    ],
    ['a fastener on a point', { 'fasteners.1.bearing': 0 }, 'OUT_OF_RANGE', 'fasteners.1.bearing', /bears on a point/],
    ['an unknown screw', { 'fasteners.1.screw': 'M7' }, 'UNKNOWN_SCREW', 'fasteners.1.screw', /no screw "M7"/],
    ['a head without fasteners', at(), 'MECHANISM', 'fasteners', /Add three or more/],
    ['one fastener', at([-21, 18]), 'MECHANISM', 'fasteners', /F1 alone .* add two more/],
    [
      'two fasteners',
      at([-21, 18], [21, 18]),
      'MECHANISM',
      'fasteners',
      /^Fasteners F1 and F2 leave the head free to rotate about the line through them; add a third fastener off that line\.$/,
    ],
    [
      'fasteners on a line',
      at([-21, 18], [0, 18], [21, 18]),
      'MECHANISM',
      'fasteners',
      /F1, F2 and F3 lie on one line/,
    ],
    [
      'two fasteners of one name',
      { 'fasteners.3.name': 'F1' },
      'SCHEMA',
      'fasteners.3.name',
      /"F1" is used twice in fasteners/,
    ],
    [
      'two cases of one name',
      { cases: [{ name: 'a' }, { name: 'a' }] },
      'SCHEMA',
      'cases.1.name',
      /used twice in cases/,
    ],
    [
      'a site touched that is not there',
      { 'cases.0.touched': ['A1', 'C1'] },
      'SCHEMA',
      'cases.0.touched.1',
      /touches site "C1".*Sites are A1 to B2/,
    ],
    [
      'heat on a material of unknown expansion',
      { 'cases.0.temperature': 85, 'body.material': 'own', materials: { own: { E: 3e5, nu: 0.2 } } },
      'SCHEMA',
      'materials.own.expansion',
      /nothing is known of the expansion of own/,
    ],
    [
      'probes that relax without a rate',
      { 'sites.probes.relax': true },
      'SCHEMA',
      'sites.probes.rate',
      /^"relax": true needs the spring rate .* Add "rate" in N\/mm\.$/,
    ],
    [
      'a limit on contact force without a rate',
      { 'limits.contactForce': 0.02 },
      'SCHEMA',
      'sites.probes.rate',
      /^limits\.contactForce needs the spring rate/,
    ],
    [
      'floating probes that no device lifts off their lip',
      { 'sites.probes.touchdown': 0.03, 'cases.0.touched': 'all' },
      'OUT_OF_RANGE',
      'sites.probes.touchdown',
      /stay on their lip.*Raise touchdown to 0\.04 N or more/,
    ],
    [
      'a wafer without dies',
      { 'sites.die': undefined, 'sites.skip': undefined, 'sites.pitch': [12, 10], 'cases.0.touched': wafer(300) },
      'SCHEMA',
      'cases.0.touched.wafer',
      /follow the grid of dies, which "sites" does not give/,
    ],
    [
      'a wafer smaller than a die',
      { 'cases.0.touched': wafer(12) },
      'OUT_OF_RANGE',
      'cases.0.touched.wafer',
      /12 mm with an edge exclusion of 3 mm holds no whole die of 6 x 5 mm/,
    ],
    [
      'an edge exclusion beyond the wafer',
      { 'cases.0.touched': { wafer: { diameter: 100, edge: 60 } } },
      'OUT_OF_RANGE',
      'cases.0.touched.wafer',
      /holds no whole die/,
    ],
    [
      'more touchdowns than can be solved',
      {
        ...{ 'sites.columns': 12, 'sites.rows': 12, 'body.outline': { rectangle: [200, 200] }, frame: undefined },
        ...at([-95, 95], [95, 95], [-95, -95], [95, -95]),
        'cases.0.touched': wafer(300),
      },
      'TOO_LARGE',
      'cases.0.touched.wafer',
      /^More than 400 different sets .* Name the sets that matter/,
    ],
    [
      'a case named like a touchdown',
      {
        cases: [
          { name: 'edge: A1', touched: ['A1'] },
          { name: 'edge', touched: wafer(100) },
        ],
      },
      'SCHEMA',
      'cases',
      /"edge: A1" stands for a case of its own/,
    ],
    [
      'floating probes that relax over a wafer',
      {
        ...{ 'sites.columns': 3, 'sites.rows': 3, 'body.outline': { rectangle: [60, 60] }, frame: undefined },
        ...at([-27, 27], [27, 27], [-27, -27], [27, -27]),
        ...{ 'sites.probes.relax': true, 'sites.probes.rate': 0.4, 'cases.0.touched': wafer(100) },
      },
      'TOO_LARGE',
      'sites.probes.relax',
      /the cases have \d+ of them\. Turn "relax" off, or name up to 24/,
    ],
    ['a mesh beyond reason', { mesh: { size: 0.01 } }, 'TOO_LARGE', 'mesh.size', /more than 300000 nodes/],
  ])('%s', (_, changes, code, path, message) => {
    const fault = compileFault(changes);
    expect({ code: fault.code, path: fault.path }).toEqual({ code, path });
    expect(fault.message).toMatch(message);
    expect(fault.message).toMatch(/[.?]$/);
  });
});
