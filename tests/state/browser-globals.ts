/** What the state asks of a browser beside IndexedDB, for Node: a memory and an empty navigator. */
const memory = new Map<string, string>()

globalThis.navigator ??= {} as Navigator
globalThis.localStorage ??= {
  getItem: (key: string) => memory.get(key) ?? null,
  setItem: (key: string, value: string) => void memory.set(key, value),
} as Storage
