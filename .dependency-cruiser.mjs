/** Which layer may see which below it. The picture of imports is a staircase. */
const may = {
  num: [],
  core: ['num'],
  words: ['core'],
  formats: ['core', 'num'],
  wire: ['core', 'formats'],
  app: ['core', 'formats'],
  store: ['host', 'app', 'core', 'formats'],
  host: ['app', 'core', 'formats'],
  print: ['words', 'formats', 'core', 'num'],
  served: ['app', 'wire', 'words', 'formats', 'core'],
  http: ['served', 'app', 'wire', 'words', 'formats', 'core'],
  cli: ['app', 'words', 'formats', 'print', 'store', 'host', 'http', 'served', 'core', 'num'],
  web: ['app', 'words', 'core', 'formats', 'wire'],
  alone: ['web', 'store', 'served', 'app', 'words', 'wire', 'formats', 'core'],
};

/** Which libraries the pure and web-safe layers may use. The others are free. */
const npm = {
  num: ['@stdlib', 'ml-matrix', 'pure-rand'],
  core: ['clipper2-ts', 'uqr', 'culori'],
  words: [],
  formats: ['culori', '@tarikjabiri/dxf', 'image-size', 'saxes', 'zod'],
  wire: ['zod'],
  app: [],
};

/** Rooms of `src/core`, from the ground up: each may see those that stand before it, and the few files that lie beside them. */
const coreStairs = [
  ['problems'],
  ['path', 'search', 'units', 'dialect', 'backups'],
  ['motion', 'focus'],
  ['machine'],
  ['tube', 'metering'],
  ['card'],
  ['reading'],
  ['cutmodel', 'photo'],
  ['stock', 'cost', 'bed'],
  ['filecheck', 'order', 'plan'],
  ['study'],
  ['proof', 'compare', 'explain', 'book'],
  ['kerf', 'marking', 'watch'],
  ['standing', 'virtual'],
  ['score', 'running'],
];

/**
 * Rooms of `src/app`. A room of a subject holds its verbs, one a file, and sees no other subject: what several need lies in
 * `shared`. `drawing` and `sums` are asked with all that they need and see no store.
 */
const appRoom = {
  drawing: [],
  sums: ['drawing'],
  ports: ['sums'],
  shared: ['ports', 'sums'],
  ...Object.fromEntries(
    ['card', 'sheet', 'order', 'book', 'machine', 'watch', 'workshop'].map((subject) => [
      subject,
      ['shared', 'ports', 'sums'],
    ]),
  ),
};

const ownFiles = { pathNot: '\\.test\\.tsx?$' };

export default {
  forbidden: [
    ...Object.entries(may).map(([layer, below]) => ({
      name: `${layer}-looks-down-only`,
      comment: `${layer} may see ${below.join(', ') || 'nothing'}`,
      severity: 'error',
      from: { path: `^src/${layer}/`, ...ownFiles },
      to: { path: '^src/', pathNot: `^src/(${[layer, ...below].join('|')})/` },
    })),
    ...Object.entries(npm).map(([layer, allowed]) => ({
      name: `${layer}-libraries`,
      comment: `${layer} may use ${allowed.join(', ') || 'no library'}`,
      severity: 'error',
      from: { path: `^src/${layer}/`, ...ownFiles },
      to: {
        dependencyTypes: ['npm', 'npm-dev', 'core', 'npm-no-pkg', 'unknown'],
        ...(allowed.length ? { pathNot: `^node_modules/(${allowed.join('|')})(/|-)` } : {}),
      },
    })),
    ...coreStairs.flatMap((step, i) =>
      step.map((room) => ({
        name: `core-${room}-sees`,
        comment: `of core, ${room} may see ${coreStairs.slice(0, i).flat().join(', ') || 'no room'}`,
        severity: 'error',
        from: { path: `^src/core/${room}/`, ...ownFiles },
        to: {
          path: '^src/core/[^/]+/',
          pathNot: `^src/core/(${[room, ...coreStairs.slice(0, i).flat()].join('|')})/`,
        },
      })),
    ),
    {
      name: 'core-on-stairs',
      comment: 'every room of core stands on a step',
      severity: 'error',
      from: {},
      to: {
        path: '^src/core/[^/]+/',
        pathNot: `^src/core/(${coreStairs.flat().join('|')})/`,
      },
    },
    ...Object.entries(appRoom).map(([room, below]) => ({
      name: `app-${room}-sees`,
      comment: `of app, ${room} may see ${below.join(', ') || 'nothing'}`,
      severity: 'error',
      from: { path: `^src/app/${room}/`, ...ownFiles },
      to: { path: '^src/app/', pathNot: `^src/app/(${[room, ...below].join('|')})/` },
    })),
    {
      name: 'app-in-rooms',
      comment: 'every file of app lies in a room that is named here',
      severity: 'error',
      from: {},
      to: { path: '^src/app/', pathNot: `^src/app/(${Object.keys(appRoom).join('|')})/` },
    },
    {
      name: 'one-door-for-words',
      comment: 'a language is asked through src/words and by nobody by its name',
      severity: 'error',
      from: { pathNot: '^src/words/|\\.test\\.tsx?$' },
      to: { path: '^src/words/[a-z]{2}/' },
    },
    {
      name: 'a-language-knows-no-door',
      severity: 'error',
      from: { path: '^src/words/[a-z]{2}/', ...ownFiles },
      to: { path: '^src/words/[^/]+$' },
    },
    {
      name: 'parts-see-no-screen',
      comment:
        'a part of the page stands on screens and knows none; what the page keeps knows neither',
      severity: 'error',
      from: { path: '^src/web/(parts|state|worker)/', ...ownFiles },
      to: { path: '^src/web/screens/' },
    },
    {
      name: 'state-sees-no-part',
      severity: 'error',
      from: { path: '^src/web/(state|worker)/', ...ownFiles },
      to: { path: '^src/web/parts/' },
    },
    {
      name: 'worker-sees-no-page',
      severity: 'error',
      from: { path: '^src/web/worker/', ...ownFiles },
      to: { path: '^src/web/(state|parts|screens)/' },
    },
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    tsPreCompilationDeps: true,
    tsConfig: { fileName: 'tsconfig.base.json' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'node', 'types'],
    },
  },
};
