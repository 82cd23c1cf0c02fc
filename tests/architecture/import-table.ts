/** What the files of one area may import. Dependencies go down only. */
export interface AreaRule {
  /** Path from the root; the longest that fits a file is its area. */
  area: string
  /** Areas it may use; its own always. */
  areas: string[]
  /** Areas of which it may use types and nothing that runs. */
  types?: string[]
  /** Areas whose files it may name by address, as workers and assets. */
  addresses?: string[]
  packages?: string[]
  /** Modules of Node, named 'node:...'. */
  node?: boolean
  /** Why, to be read when a test fails. */
  because: string
}

const PURE = ['valibot', 'fflate']
const VIEW = ['preact', '@preact/signals']

export const IMPORT_TABLE: AreaRule[] = [
  {
    area: 'src/shared',
    areas: [],
    packages: PURE,
    because: 'it runs in the page, in workers and in Node, so it must be pure',
  },
  {
    area: 'src/shared/qr',
    areas: ['src/shared'],
    packages: ['qr'],
    because: 'drawing and reading QR codes is pure and has one place',
  },
  {
    area: 'workers/recogniser',
    areas: ['src/shared'],
    addresses: ['src/core'],
    packages: ['comlink'],
    because: 'a worker wraps shared code and the core for another thread, and no more',
  },
  {
    area: 'workers/service',
    areas: ['src/shared'],
    because: 'the service worker knows files, not the app',
  },
  {
    area: 'src/sensors',
    areas: ['src/shared'],
    because: 'a source of samples must work without anything that uses samples',
  },
  {
    area: 'src/storage',
    areas: ['src/shared'],
    packages: ['idb'],
    because: 'storage keeps what it is given and asks nobody',
  },
  {
    area: 'src/recogniser',
    areas: ['src/shared'],
    addresses: ['workers/recogniser'],
    packages: ['comlink'],
    because: 'it is the page side of the worker boundary, and no more',
  },
  {
    area: 'src/recording',
    areas: ['src/shared', 'src/sensors', 'src/storage'],
    types: ['src/recogniser'],
    because: 'recording joins sensors and storage below any screen',
  },
  {
    area: 'src/board',
    areas: ['src/shared'],
    because: 'it reads a serial port line by line and leaves what lines mean to others',
  },
  {
    area: 'src/camera',
    areas: ['src/shared'],
    because: 'it gives the text that a camera sees and leaves what it means to others',
  },
  {
    area: 'src/webdav',
    areas: ['src/shared'],
    because: 'it talks to a folder on a server and leaves what files mean to others',
  },
  {
    area: 'src/export',
    areas: ['src/shared'],
    addresses: ['src/core'],
    because: 'an exported file depends on the library and the core alone',
  },
  {
    area: 'src/offline',
    areas: [],
    packages: ['workbox-window'],
    because: 'keeping the app offline has nothing to do with what the app does',
  },
  {
    area: 'src/state',
    areas: [
      'src/shared',
      'src/sensors',
      'src/board',
      'src/camera',
      'src/webdav',
      'src/storage',
      'src/recogniser',
      'src/recording',
      'src/export',
      'src/offline',
    ],
    addresses: ['src/core'],
    packages: ['@preact/signals'],
    because: 'state joins the parts for the screens and knows no screen',
  },
  {
    area: 'src/ui',
    areas: ['src/state', 'src/shared'],
    types: ['src/sensors', 'src/recording', 'src/storage', 'src/offline'],
    packages: [...VIEW, 'ogl'],
    because: 'screens show state and hold no logic of their own',
  },
  {
    area: 'src/main.tsx',
    areas: ['src/state', 'src/ui', 'src/offline'],
    packages: VIEW,
    because: 'it only puts state and screens together',
  },
  {
    area: 'src/build',
    areas: ['src/shared'],
    addresses: ['src/core', 'src/main.tsx'],
    packages: [
      '@preact/preset-vite',
      '@valibot/to-json-schema',
      '@yowasp/clang',
      'dynamic-time-warping',
      'fflate',
      'playwright-core',
      'qrcode',
      'selfsigned',
    ],
    node: true,
    because: 'commands run the same shared code as the app, in Node',
  },
]

/** Packages with exactly one home on each side of a boundary. */
export const PACKAGE_OWNERS: Record<string, string[]> = {
  idb: ['src/storage'],
  comlink: ['src/recogniser', 'workers/recogniser'],
  'workbox-window': ['src/offline'],
  ogl: ['src/ui/replay'],
  qr: ['src/shared/qr'],
}
