/** Rooms of an engine -> what each may know of the engine beside itself: doors of rooms, or files of the engine's own top. */
const rooms = {
  'cart-allocation': {
    case: [],
    bound: ['case'],
    'carry-out': ['case', 'bound'],
    pinned: ['case'],
    exact: ['case', 'pinned'],
    check: ['case'],
    solve: ['case', 'bound', 'carry-out', 'pinned', 'exact', 'check'],
    why: ['case', 'solve'],
    tour: ['case', 'solve', 'check'],
  },
  'truck-pack': {
    case: [],
    space: ['case'],
    bound: ['case'],
    rows: ['case', 'space', 'bound'],
    fleet: ['case', 'space', 'bound', 'rows'],
    free: ['case', 'space', 'bound', 'rows', 'fleet'],
    container: [],
    check: ['case'],
    small: ['case', 'bound'],
    stowage: ['case', 'space', 'bound', 'container', 'check'],
  },
};

const engines = Object.keys(rooms).join('|');

const oneWayRules = Object.entries(rooms).flatMap(([engine, known]) =>
  Object.entries(known).map(([room, others]) => ({
    name: `${engine}-${room}-knows`,
    comment: `Arrows between the rooms of ${engine} run one way: ${room} knows ${others.join(' and ') || 'no other room'}.`,
    severity: 'error',
    from: { path: `^libs/${engine}/${room}/`, pathNot: '\\.spec\\.ts$' },
    to: { path: `^libs/${engine}/`, pathNot: `^libs/${engine}/(${[room, ...others].join('|')})(/|$)` },
  })),
);

/**
 * Who may import whom. Each rule says why; tests/architecture holds a file against each that breaks it.
 * Read by `npm run check` and by those tests.
 */
export const rules = {
  forbidden: [
    {
      name: 'rooms-have-doors',
      comment: 'A room of an engine is entered through its index.ts, which says what the room is for; what stands behind it may change.',
      severity: 'error',
      from: { pathNot: `^libs/(${engines})/[^/]+/` },
      to: { path: `^libs/(${engines})/[^/]+/`, pathNot: '/index\\.ts$' },
    },
    {
      name: 'rooms-meet-at-doors',
      comment: 'Rooms of one engine use one another through their doors as well.',
      severity: 'error',
      from: { path: `^libs/(${engines})/([^/]+)/` },
      to: { path: '^libs/$1/[^/]+/', pathNot: ['^libs/$1/$2/', '/index\\.ts$'] },
    },
    ...oneWayRules,
    {
      name: 'no-circles',
      comment: 'Two files that need each other are one idea in two places; two-way relations also crash at load under ES modules.',
      severity: 'error',
      from: { pathNot: '^libs/contracts/' },
      to: { circular: true },
    },
    {
      name: 'libs-are-pure',
      comment: 'Engines know neither Node nor a framework: the same code runs in the API, in the browser and on the command line.',
      severity: 'error',
      from: { path: '^libs/', pathNot: ['\\.spec\\.ts$', '^libs/contracts/'] },
      to: { pathNot: '^(libs/|node_modules/(zod|temporal-polyfill|lean-qr|jsbarcode)/)' },
    },
    {
      name: 'engines-stand-alone',
      comment: 'An engine uses the kernel and the codes of the trade only: each can be read, tested and replaced without the others.',
      severity: 'error',
      from: {
        path: '^libs/(hang-statics|cart-allocation|truck-pack|hardware-count|inspection-calendar)/',
        pathNot: '\\.spec\\.ts$',
      },
      to: { path: '^libs/', pathNot: '^libs/(kernel|trade|$1)/' },
    },
    {
      name: 'kernel-knows-nobody',
      comment: 'The kernel is what everything else stands on.',
      severity: 'error',
      from: { path: '^libs/kernel/', pathNot: '\\.spec\\.ts$' },
      to: { path: '^libs/', pathNot: '^libs/kernel/' },
    },
    {
      name: 'trade-knows-the-kernel',
      comment: 'Codes, subjects and figures are what everybody may know; they know the kernel alone.',
      severity: 'error',
      from: { path: '^libs/trade/', pathNot: '\\.spec\\.ts$' },
      to: { path: '^libs/', pathNot: '^libs/(kernel|trade)/' },
    },
    {
      name: 'words-know-the-trade',
      comment: 'Words are made of codes and figures alone: a sentence that looks at a plan would decide something.',
      severity: 'error',
      from: { path: '^libs/words/', pathNot: '\\.spec\\.ts$' },
      to: { path: '^libs/', pathNot: '^libs/(kernel|trade|words)/' },
    },
    {
      name: 'tour-file-before-plan',
      comment: 'A tour file is input: it knows neither plans nor engines nor drawings.',
      severity: 'error',
      from: { path: '^libs/tour-file/' },
      to: { path: '^libs/', pathNot: '^libs/(kernel|trade|tour-file)/' },
    },
    {
      name: 'editions-know-the-file',
      comment: 'Which way a change goes is read off what is on file: it knows the tour file, and no plan that is made of it.',
      severity: 'error',
      from: { path: '^libs/editions/', pathNot: '\\.spec\\.ts$' },
      to: { path: '^libs/', pathNot: '^libs/(kernel|trade|tour-file|editions)/' },
    },
    {
      name: 'records-know-the-file',
      comment:
        'What a record must hold and how long it is kept is read off rules and records on file; no plan and no screen has a say in it.',
      severity: 'error',
      from: { path: '^libs/records/', pathNot: '\\.spec\\.ts$' },
      to: { path: '^libs/', pathNot: '^libs/(kernel|trade|tour-file|records)/' },
    },
    {
      name: 'rooms-have-one-door',
      comment: 'A room of a lib is entered through its index.ts, which says what the room is for; what stands behind it may be rearranged.',
      severity: 'error',
      from: {
        path: '^libs/(pack-plan|cart-allocation|truck-pack|tour-file|drawings|inspection-calendar)/([^/]+)/',
        pathNot: '\\.spec\\.ts$',
      },
      to: { path: '^libs/$1/[^/]+/', pathNot: ['^libs/$1/$2/', '/index\\.ts$'] },
    },
    {
      name: 'the-contract-knows-no-result',
      comment: 'What a plan is stands apart from how it is made: every room may know the contract, it knows none.',
      severity: 'error',
      from: { path: '^libs/pack-plan/contract/', pathNot: '\\.spec\\.ts$' },
      to: { path: '^libs/pack-plan/', pathNot: '^libs/pack-plan/contract/' },
    },
    {
      name: 'nobody-knows-the-maker',
      comment: 'The maker knows all results in their order; a result that leaned on it could not be read alone.',
      severity: 'error',
      from: { path: '^libs/pack-plan/', pathNot: ['^libs/pack-plan/make/', '^libs/pack-plan/index\\.ts$', '\\.spec\\.ts$'] },
      to: { path: '^libs/pack-plan/make/' },
    },
    {
      name: 'plan-before-drawings',
      comment: 'A plan is made without being drawn.',
      severity: 'error',
      from: { path: '^libs/pack-plan/' },
      to: { path: '^libs/(drawings|contracts)/' },
    },
    {
      name: 'web-sees-contracts-and-libs',
      comment: 'The screens talk to the API through the generated operations; they never import its code.',
      severity: 'error',
      from: { path: '^apps/web/' },
      to: { path: '^(apps/(?!web/)|migrations/)', pathNot: '^apps/deploy/alarms[.]md$' },
    },
    {
      name: 'platform-knows-no-feature',
      comment: 'What no feature owns must not lean on one.',
      severity: 'error',
      from: { path: '^apps/api/src/platform/' },
      to: { path: '^apps/api/src/features/' },
    },
    {
      name: 'planning-knows-no-feature',
      comment:
        'Features hand their work to planning and read tour files there; it reads what is on file by SQL, so no folder needs another in a circle.',
      severity: 'error',
      from: { path: '^apps/api/src/planning/' },
      to: { path: '^apps/api/src/features/' },
    },
    {
      name: 'platform-knows-no-planning',
      comment: 'What no feature owns must not lean on how plans are made.',
      severity: 'error',
      from: { path: '^apps/api/src/platform/' },
      to: { path: '^apps/api/src/planning/' },
    },
    {
      name: 'features-meet-at-readers-and-writers',
      comment:
        "A feature may use another's .reader.ts, and its .writer.ts inside a unit of work of its own; rows, queries and services stay at home.",
      severity: 'error',
      from: { path: '^apps/api/src/features/([^/]+)/' },
      to: {
        path: '^apps/api/src/features/([^/]+)/',
        pathNot: ['^apps/api/src/features/$1/', '\\.(reader|writer)\\.ts$', '\\.module\\.ts$'],
      },
    },
    {
      name: 'screens-never-read-the-whole-register',
      comment: 'A screen asks for what it shows: its query file reads pages, counts and single items, never all of the kit.',
      severity: 'error',
      from: { path: '\\.query\\.ts$' },
      to: { path: '(kit|tour-file)\\.reader\\.ts$' },
    },
    {
      name: 'rows-never-leave-the-api',
      comment: 'Row classes are private to the API; only the list of entities and its own feature name them.',
      severity: 'error',
      from: { pathNot: '^(apps/api/src/|tests/)' },
      to: { path: '/rows\\.ts$' },
    },
    {
      name: 'nobody-imports-tests',
      comment: 'A product that leans on its tests cannot be tested.',
      severity: 'error',
      from: { pathNot: '(^tests/|\\.spec\\.tsx?$)' },
      to: { path: '(^tests/|\\.spec\\.tsx?$)' },
    },
    {
      name: 'everything-resolves',
      comment: 'An import that does not resolve is a fault that waits for its day.',
      severity: 'error',
      from: { pathNot: '^libs/contracts/' },
      // What the bundler takes as an address of a file is known to it alone.
      to: { couldNotResolve: true, pathNot: '\\?url$' },
    },
  ],
};

export const cruiseOptions = {
  ruleSet: rules,
  validate: true,
  doNotFollow: { path: 'node_modules' },
  exclude: { path: '^(dist|\\.data|node_modules/\\.cache)/' },
  tsPreCompilationDeps: true,
  enhancedResolveOptions: {
    conditionNames: ['cartwright-source', 'node', 'import', 'types', 'default'],
    exportsFields: ['exports'],
    extensions: ['.ts', '.tsx', '.js', '.json'],
  },
};
