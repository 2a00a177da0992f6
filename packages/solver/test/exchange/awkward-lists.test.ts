import { describe, expect, it } from 'vitest';
import { readFastenerList } from '../../src/exchange/fastener-list.ts';
import { readHeightMap } from '../../src/exchange/heights.ts';
import { type ProbeListOptions, readProbeList } from '../../src/exchange/probe-list.ts';
import { faultOf } from '../model/fault-of.ts';

/** Places in mm of a list whose probes are at (1, 2) and (2, 2) unless it says otherwise, with forces in N. */
function placesOf(text: string, options: ProbeListOptions = {}) {
  const { read, preview } = readProbeList(text, { gap: 1000, ...options });
  const [{ centre, probes }] = read.sites;
  const near = (value: number) => Number(value.toFixed(9));
  const places = probes
    .map(([x, y, force]) => [near(x + centre[0]), near(y + centre[1]), force === null ? null : near(force)])
    .sort(([a], [b]) => a! - b!);
  return { places, said: preview.guesses.join(' '), dropped: preview.dropped, units: preview.units };
}
const TWO = [
  [1, 2, null],
  [2, 2, null],
];
const PRESSED = TWO.map(([x, y]) => [x, y, 0.03]);

describe('a list of the trade', () => {
  it.each([
    ['units in brackets', 'Site;X [mm];Y [mm];Preload [cN]\nA;1,0;2;3\nA;2;2;3,0\n', PRESSED],
    ['a line of units below the header', 'X,Y,F\n[um],[um],[cN]\n1000,2000,3\n2000,2000,3\n', PRESSED],
    ['a line of bare units', 'Pin;X;Y;F\n-;mm;mm;cN\n1;1;2;3\n2;2;2;3\n', PRESSED],
    ['units as last words', 'X in um,Y in um\n1000,2000\n2000,2000\n', TWO],
    ['units spelt out', 'x millimeters,y millimeters\n1,2\n2,2\n', TWO],
    ['coordinates by other names', 'Ref,Mid X,Mid Y\nP1,1mm,2mm\nP2,2mm,2mm\n', TWO],
    ['X_POS beside PAD_X', 'REF_DES,X_POS,Y_POS,PAD_X,PAD_Y\nP1,1,2,0.3,0.4\nP2,2,2,0.3,0.4\n', TWO],
    ['nominal beside measured places', 'X nom,Y nom,X act,Y act\n1,2,1.001,2\n2,2,2.001,2\n', TWO],
    ['German titles', 'Nr.;X-Koordinate;Y-Koordinate;Kraft (cN)\n1;1,0;2,0;3\n2;2,0;2,0;3\n', PRESSED],
    ['the header in a comment', '# made up\n# y x\n2 1\n2 2\n', TWO],
    ['a number sign as title', '#;Y;X\n1;2;1\n2;2;2\n', TWO],
    ['grouped thousands in quotes', 'x (um),y (um)\n"1,000.0","2,000"\n"2,000.0","2,000"\n', TWO],
    ['points that group thousands', 'x (um);y (um)\n1.000,0;2.000\n2.000,0;2.000,0\n', TWO],
    ['blanks that group thousands', 'x (um);y (um)\n1 000,0;2 000\n2 000,0;2 000,0\n', TWO],
    ['a line end within quotes', 'name,x,y,note\n"P\n1",1,2,"first\nsecond"\nP2,2,2,\n', TWO],
    ['carriage returns only', 'x,y\r1,2\r2,2\r', TWO],
    ['exponents with commas', 'x;y\n1,0E+00;2,0E+00\n2,0e0;2,0e0\n', TWO],
    ['a separator at the end of lines', 'x,y,\n1,2,\n2,2,\n', TWO],
  ])('is read with %s', (_, text, expected) => {
    const { places, dropped } = placesOf(text);
    expect(dropped).toEqual([]);
    expect(places).toEqual(expected);
  });

  it.each([
    ['totals', 'Pin,X,Y\n1,1,2\n2,2,2\nMean,1.5,2\nMax:,2.5,2\n', [4, 5], /"Mean" makes it a total/],
    ['a header on every page', 'x,y\n1,2\nx,y\n2,2\n', [3], /x is "x", which is no number/],
    ['decimal commas between commas', 'x,y,force\n1,2,\n2,2,\n1,5,2,5,0,1\n', [4], /6 cells where the header has 3/],
    ['titles of two words between blanks', 'x y\n1 2\n2 2\n3 mm 4 mm\n', [4], /4 cells where the header has 2/],
    ['fractions', 'x,y\n1/2,3/4\n1,2\n2,2\n', [2], /"1\/2", which is no number/],
    ['what is no finite number', 'x,y\nNaN,2\n0x10,3\n1e400,2\n1,2\n2,2\n', [2, 3, 4], /NaN/],
  ])('leaves out %s by line', (_, text, lines, reason) => {
    const { places, dropped } = placesOf(text);
    expect(places.map(([x, y]) => [x, y])).toEqual(TWO.map(([x, y]) => [x, y]));
    expect(dropped.map(({ line }) => line)).toEqual(lines);
    expect(dropped[0].reason).toMatch(reason);
  });

  it.each([
    ['polar places', 'R,Theta\n1,90\n2,90\n', /reads like a header, "R \| Theta", but its titles are not known/],
    ['polar places and a separator at the end', 'R,Theta,\n1,90,\n2,90,\n', /titles are not known/],
    ['pads that may be sizes', 'PAD,PAD_X,PAD_Y\nP1,1,2\nP2,2,2\n', /PAD_X.*Name the columns/],
    [
      'an unknown unit of length',
      'x (furlong),y (furlong)\n1,2\n',
      /gives "furlong", which is no known unit of length/,
    ],
    ['a pressure for a force', 'x,y,Force (bar)\n1,2,5\n', /gives "bar", which is no known unit of force/],
    ['a force for a whole site', 'x,y,Preload / site\n1,2,5\n', /gives "site"/],
    ['places in two units', 'X mm,Y mm,X inch,Y inch\n25.4,50.8,1,2\n', /Columns 1 and 3 .* could all be x/],
    ['three columns without a header', '17 1 2\n23 2 2\n', /no header, and 3 columns of numbers/],
    ['one decimal sign for x, another for y', 'x;y\n1,5;2.5\n2,5;2.5\n', /write all numbers alike/],
  ])('is refused with %s', (_, text, message) => {
    expect(faultOf(() => readProbeList(text))).toMatchObject({
      code: 'UNREADABLE',
      message: expect.stringMatching(message),
    });
  });

  it('takes a unit that the caller gives in place of one that is not known', () => {
    const text = 'x (dbu),y (dbu),Force (bar)\n1000,2000,3\n2000,2000,3\n';
    expect(placesOf(text, { units: 'um', forceUnits: 'cN' }).places).toEqual(PRESSED);
    expect(faultOf(() => readProbeList(text, { units: 'um' })).message).toMatch(/"bar"/);
  });

  it('says what it takes bare forces as, marks in doubt, and names of sites that it does not heed', () => {
    expect(placesOf('x,y,F\n1,2,5\n2,2,7\n').said).toMatch(/Forces without a unit are taken as N: they are 5 to 7/);
    const doubtful = placesOf('x (um),y (um)\n"1,250","2,000"\n"2,250","2,000"\n');
    expect(doubtful.places[0]).toEqual([0.00125, 0.002, null]);
    expect(doubtful.said).toMatch(/"1,250" and its like are read as 1\.25: if its sign groups thousands/);
    expect(readProbeList('x,y\n0,0\n1,0\n20,0\n21,0\n').preview.guesses.join(' ')).toMatch(
      /taken as one site: the gap of 19 mm would leave fewer than 4 on one side/,
    );
    const { preview } = readProbeList('Site,x,y\nA,1,2\n,2,2\n');
    expect(preview.guesses.join(' ')).toMatch(/names of sites are not heeded: 1 rows have none, such as line 3/);
  });
});

describe('heights of the trade', () => {
  it('have a unit, or are refused where they would be a millimetre and more', () => {
    const list = (unit: string) => `X (mm),Y (mm),Z${unit}\n0,0,12\n50,0,5\n0,50,7\n`;
    expect(readHeightMap(list(' [\u00b5m]')).read.points[0]).toEqual([0, 0, 0.012]);
    expect(faultOf(() => readHeightMap(list('').replaceAll(' (mm)', ''))).message).toMatch(
      /spread over 7 mm.*probably um/,
    );
    expect(readHeightMap(list(''), { heightUnits: 'um' }).read.points[0]).toEqual([0, 0, 0.012]);
  });

  it('are refused as a matrix, which is no list', () => {
    const matrix = ',0,10,20\n0,0.1,0.2,0.3\n10,0.2,0.3,0.4\n20,0.3,0.4,0.5\n';
    expect(faultOf(() => readHeightMap(matrix)).message).toMatch(/no header, and 4 columns of numbers/);
  });
});

describe('a fastener table of the trade', () => {
  it('is not read where its titles are not known', () => {
    const fault = faultOf(() => readFastenerList('Schraube;Ort 1;Ort 2\nF1;1;2\nF2;3;4\n'));
    expect(fault).toMatchObject({ code: 'UNREADABLE', message: expect.stringMatching(/reads like a header/) });
  });
});
