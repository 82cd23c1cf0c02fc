import { existsSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { type AreaRule, IMPORT_TABLE, PACKAGE_OWNERS } from './import-table'
import { type Import, importsOf, packageName, typescriptOf } from './source-files'

const files = typescriptOf('src', 'workers')
const imports = files.flatMap(importsOf)

describe('the import table', () => {
  it('covers every file', () => {
    const homeless = files.filter(({ path }) => ruleFor(path) === undefined)
    expect(homeless.map(({ path }) => `${path} is in no area of import-table.ts`)).toEqual([])
  })

  it.each(IMPORT_TABLE)('is kept in $area', (rule) => {
    const own = imports.filter(({ from }) => ruleFor(from) === rule)
    expect(own.flatMap((found) => complaint(found, rule) ?? [])).toEqual([])
  })

  it.each(Object.entries(PACKAGE_OWNERS))('%s has one owner: %s', (name, owners) => {
    const strangers = imports
      .filter(({ target, specifier }) => target === null && packageName(specifier) === name)
      .filter(({ from }) => !owners.some((owner) => from.startsWith(`${owner}/`)))
    expect(
      strangers.map(({ from }) => `${from} imports ${name}; only ${owners.join(' and ')} may`),
    ).toEqual([])
  })

  it('is not walked round in circles', () => {
    expect(findCircle()?.join(' -> ') ?? 'none').toBe('none')
  })
})

function ruleFor(path: string): AreaRule | undefined {
  return IMPORT_TABLE.filter(({ area }) => isWithin(path, area)).sort(
    (one, other) => other.area.length - one.area.length,
  )[0]
}

function isWithin(path: string, area: string): boolean {
  return path === area || path.startsWith(`${area}/`)
}

/** A sentence when an import breaks its area's rule. */
function complaint(found: Import, rule: AreaRule): string | undefined {
  const { from, specifier } = found
  if (isAllowed(found, rule)) return undefined
  const how = found.typeOnly ? 'takes a type from' : 'imports'
  return `${from} ${how} '${specifier}', but ${rule.area} may not: ${rule.because}.`
}

function isAllowed({ target, specifier, typeOnly, byAddress }: Import, rule: AreaRule): boolean {
  if (target === null) {
    if (specifier.startsWith('node:')) return rule.node === true
    const tools = rule.node ? ['vite', 'vitest'] : []
    return [...(rule.packages ?? []), ...tools].includes(packageName(specifier))
  }
  const areas = [rule.area, ...rule.areas]
  if (typeOnly) areas.push(...(rule.types ?? []))
  if (byAddress) areas.push(...(rule.addresses ?? []))
  // A file in src/build may name the repository's root to find other files.
  return areas.some((area) => isWithin(target, area)) || (byAddress && rule.node === true)
}

/** Paths of a circle of imports that run, or null. */
function findCircle(): string[] | null {
  const next = new Map<string, string[]>()
  for (const { from, target, typeOnly, byAddress } of imports) {
    const to = target === null || typeOnly || byAddress ? undefined : resolve(target)
    if (to !== undefined) next.set(from, [...(next.get(from) ?? []), to])
  }
  const done = new Set<string>()
  const visit = (path: string, trail: string[]): string[] | null => {
    if (trail.includes(path)) return [...trail.slice(trail.indexOf(path)), path]
    if (done.has(path)) return null
    for (const target of next.get(path) ?? []) {
      const circle = visit(target, [...trail, path])
      if (circle !== null) return circle
    }
    done.add(path)
    return null
  }
  for (const path of next.keys()) {
    const circle = visit(path, [])
    if (circle !== null) return circle
  }
  return null
}

function resolve(target: string): string | undefined {
  return ['.ts', '.tsx', '/index.ts', '/index.tsx', '']
    .map((ending) => target + ending)
    .find((path) => /\.\w+$/.test(path) && existsSync(repositoryPath(path)))
}
