/** Who may import whom. Read by scripts/check-imports.mjs; the reasons are in DEVELOPERS.md under "Rooms". */

/** Rooms of the solver in order of depth, each with the rooms it may import. Itself and `fault` are always allowed. */
export const rooms = {
  fault: [],
  geometry: [],
  section: [],
  element: [],
  'linear-algebra': [],
  layout: ['geometry'],
  plate: ['geometry', 'section'],
  mesh: ['geometry'],
  model: ['plate', 'geometry', 'section', 'layout'],
  assembly: ['mesh', 'element', 'linear-algebra', 'section', 'geometry'],
  supports: ['linear-algebra', 'mesh', 'element', 'assembly'],
  structure: ['supports', 'assembly', 'mesh', 'plate', 'section', 'geometry', 'element', 'linear-algebra'],
  results: [
    'structure',
    'supports',
    'assembly',
    'mesh',
    'model',
    'plate',
    'layout',
    'section',
    'geometry',
    'element',
    'linear-algebra',
  ],
  studies: ['results', 'structure', 'supports', 'assembly', 'mesh', 'model', 'plate', 'layout', 'section', 'geometry'],
  exchange: ['results', 'mesh', 'model', 'plate', 'layout', 'geometry'],
  worker: ['studies', 'results', 'model', 'linear-algebra'],
};

/** Rooms that drive whole solves. */
const drivers = ['studies', 'worker'];

/** Files directly under `src`: the pipelines read top down, `index.ts` is what the package offers. */
const solver = '^packages/solver/src';
const pipelines = `${solver}/solve-[^/]+$`;
const index = `${solver}/index\\.ts$`;
/** Cases with known answers: a reader of the solver, offered on its own. */
const verification = '^packages/solver/verification/';
const book = `${verification}index\\.ts$`;
/** What the package offers to those who load it on its own: files of other programs. */
const exchange = `${solver}/exchange/exchange\\.ts$`;
/** A constant that every room may know. */
const version = `${solver}/version\\.ts$`;

const roomRules = Object.entries(rooms).map(([room, allowed]) => ({
  name: `room-${room}`,
  comment: `${room} may import ${['fault', ...allowed].join(', ')}`,
  severity: 'error',
  from: { path: `${solver}/${room}/` },
  to: {
    path: `${solver}/`,
    pathNot: [
      `${solver}/(${['fault', room, ...allowed].join('|')})/`,
      version,
      ...(drivers.includes(room) ? [pipelines] : []),
    ],
  },
}));

const never = (name, comment, from, to) => ({ name, comment, severity: 'error', from, to });

export default {
  forbidden: [
    ...roomRules,
    never(
      'unknown-room',
      'every room of the solver has its line in the table above',
      {
        path: `${solver}/[^/]+/`,
        pathNot: `${solver}/(${Object.keys(rooms).join('|')})/`,
      },
      {},
    ),
    never(
      'pipelines-below-worker',
      'the pipelines know every room except those that drive them',
      { path: pipelines },
      {
        path: [`${solver}/(studies|exchange|worker)/`, index],
      },
    ),
    never('no-cycles', 'modules import one way', {}, { circular: true }),
    never('unresolved', 'every import resolves', {}, { couldNotResolve: true }),
    never(
      'solver-runs-anywhere',
      'the solver runs in Node and in a worker: its own libraries only',
      { path: [`${solver}/`, verification] },
      {
        dependencyTypes: ['core', 'npm-dev', 'npm-no-pkg', 'npm-unknown'],
      },
    ),
    never(
      'solver-draws-nothing',
      'no user interface in the solver',
      { path: '^packages/solver/' },
      {
        path: '(^|/)node_modules/(@react-three/|@mantine/|react|three|zustand)',
      },
    ),
    never(
      'solver-stands-alone',
      'the solver knows neither the command line nor the viewer',
      { path: '^packages/solver/' },
      {
        path: '^packages/(cli|viewer)/',
      },
    ),
    never(
      'book-beside-solver',
      'the verification book reads the solver and nothing in the solver reads it',
      { path: `${solver}/` },
      { path: verification },
    ),
    never(
      'cli-by-the-front-door',
      'the command line sees what @flathead/solver offers, nothing behind it',
      { path: '^packages/cli/' },
      {
        path: '^packages/(viewer|solver)/',
        pathNot: [index, book, exchange],
      },
    ),
    never(
      'viewer-by-the-front-door',
      'the viewer sees what @flathead/solver offers and its workers',
      { path: '^packages/viewer/' },
      {
        path: '^packages/(cli|solver)/',
        pathNot: [index, book, exchange, `${solver}/worker/(study-)?server\\.ts$`],
      },
    ),
    never(
      'plain-before-pictures',
      'buffers/ and format/ are plain functions: no component, no three.js',
      {
        path: '^packages/viewer/src/(buffers|format)/',
      },
      {
        path: [
          '(^|/)node_modules/(@react-three/|@mantine/|react|three)',
          '^packages/viewer/src/(scene|panels|charts|app)/',
        ],
      },
    ),
    never(
      'sources-before-tests',
      'nothing that ships imports a test',
      { path: '^packages/[^/]+/src/' },
      {
        path: ['/test/', '^tests/', '^benchmarks/', '^scripts/'],
      },
    ),
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    exclude: { path: '^packages/[^/]+/dist/' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: { exportsFields: ['exports'], conditionNames: ['import', 'types', 'default'] },
  },
};
