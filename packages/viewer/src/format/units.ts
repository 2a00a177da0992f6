/**
 * What one of another unit is in the unit of a field, exact by definition: inch 25.4 mm, pound-force 4.4482216152605 N
 * (international yard and pound agreement, 1959; standard gravity 9.80665 m/s2, CGPM 1901).
 */
const INCH = 25.4;
const POUND = 4.4482216152605;
const GRAM = 9.80665e-3;

type Table = Readonly<Record<string, number>>;

const LENGTHS: Table = {
  nm: 1e-6,
  µm: 1e-3,
  um: 1e-3,
  mm: 1,
  cm: 10,
  m: 1000,
  in: INCH,
  inch: INCH,
  '"': INCH,
  mil: INCH / 1000,
  thou: INCH / 1000,
};
const FORCES: Table = {
  N: 1,
  mN: 1e-3,
  cN: 1e-2,
  kN: 1000,
  gf: GRAM,
  g: GRAM,
  kgf: 1000 * GRAM,
  lbf: POUND,
  lb: POUND,
  ozf: POUND / 16,
};
const STRESSES: Table = {
  Pa: 1e-6,
  kPa: 1e-3,
  MPa: 1,
  'N/mm²': 1,
  'N/mm2': 1,
  GPa: 1000,
  psi: POUND / INCH ** 2,
  ksi: (1000 * POUND) / INCH ** 2,
};

const scaled = (table: Table, by: number): Table =>
  Object.fromEntries(Object.entries(table).map(([name, factor]) => [name, factor / by]));

/** Units that may be typed into a field, by the unit of the field: what one of them is in it. */
const FIELDS: Readonly<Record<string, Table>> = {
  mm: LENGTHS,
  µm: scaled(LENGTHS, 1e-3),
  N: FORCES,
  MPa: STRESSES,
  GPa: scaled(STRESSES, 1000),
  'N mm': {
    'N mm': 1,
    Nmm: 1,
    'N cm': 10,
    Ncm: 10,
    'N m': 1000,
    Nm: 1000,
    'in lbf': INCH * POUND,
    'in lb': INCH * POUND,
  },
  'N/mm': { 'N/mm': 1, 'N/µm': 1000, 'N/um': 1000, 'N/m': 1e-3, 'kN/mm': 1000, 'lbf/in': POUND / INCH, 'gf/mm': GRAM },
  'N/mm³': { 'N/mm³': 1, 'N/mm3': 1, 'MPa/mm': 1 },
  '°C': { '°C': 1, C: 1 },
  '°': { '°': 1, deg: 1, rad: 180 / Math.PI },
  'g/cm³': { 'g/cm³': 1, 'g/cm3': 1, 'kg/m³': 1e-3, 'kg/m3': 1e-3 },
};

/**
 * What one of a unit is in the unit of a field. Capitals count, as `mN` and `MN` differ; where they leave no doubt they
 * do not.
 *
 * @returns `null` for a unit that does not belong in the field
 */
export function unitFactor(typed: string, unit: string): number | null {
  const plain = (text: string): string => text.normalize('NFKC').replace(/\s+/g, ' ').trim();
  const wanted = plain(typed);
  if (wanted === '' || wanted.toLowerCase() === plain(unit).toLowerCase()) return 1;
  const table = Object.entries(FIELDS[unit] ?? {}).map(([name, factor]) => [plain(name), factor] as const);
  const exact = table.find(([name]) => name === wanted);
  if (exact !== undefined) return exact[1];
  const alike = table.filter(([name]) => name.toLowerCase() === wanted.toLowerCase());
  return alike.length === 1 && alike[0][0].length > 2 ? alike[0][1] : null;
}
