import { existsSync, readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { repositoryPath } from '../../src/build/paths'
import { type Import, importsOf, packageName, typescriptOf } from './source-files'

interface Package {
  scripts: Record<string, string>
  dependencies: Record<string, string>
  devDependencies: Record<string, string>
}

const project: Package = JSON.parse(readFileSync(repositoryPath('package.json'), 'utf8'))
const files = typescriptOf('src', 'workers', 'tests')
const imports = files.flatMap(importsOf)
const texts = files.map(({ text }) => text)

/** Used by commands or compilers, and imported by nobody. */
const TOOLS = ['@biomejs/biome', '@types/node', 'tsx', 'typescript']

describe('package.json', () => {
  it('names every package that the app imports as a dependency', () => {
    const inApp = packagesOf(imports.filter(({ from }) => !/^(tests|src\/build)\//.test(from)))
    expect(inApp.filter((name) => !(name in project.dependencies))).toEqual([])
  })

  it('names every package that tests and commands import', () => {
    const all = { ...project.dependencies, ...project.devDependencies }
    expect(packagesOf(imports).filter((name) => !(name in all))).toEqual([])
  })

  it('names no package that nobody uses', () => {
    const used = (name: string) =>
      texts.some(
        (text) => text.includes(`'${name}`) || text.includes(`@vitest-environment ${name}`),
      )
    const named = Object.keys({ ...project.dependencies, ...project.devDependencies })
    const unused = named
      .filter((name) => !TOOLS.includes(name))
      .filter((name) => !used(name.replace('@types/', '')))
    expect(unused).toEqual([])
  })

  it('has no command whose file is missing', () => {
    const files = Object.values(project.scripts).flatMap((command) => [
      ...command.matchAll(/\btsx (\S+)/g),
    ])
    const missing = files.filter(([, file = '']) => !existsSync(repositoryPath(file)))
    expect(missing.map(([, file]) => file)).toEqual([])
  })

  it('is locked without the address of any registry, so that each user takes their own', () => {
    const lock = readFileSync(repositoryPath('package-lock.json'), 'utf8')
    expect(lock.match(/"resolved": "https?:[^"]*"/g) ?? []).toEqual([])
  })
})

function packagesOf(found: Import[]): string[] {
  const names = found
    .filter(({ target, specifier }) => target === null && !specifier.startsWith('node:'))
    .map(({ specifier }) => packageName(specifier))
  return [...new Set(names)].filter((name) => !name.includes('?') && name !== '').sort()
}
