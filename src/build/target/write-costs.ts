import { writeFileSync } from 'node:fs'
import type { OperationCosts } from '../../shared/budget/costs'
import { repositoryPath } from '../paths'

const FILE = repositoryPath('src/shared/budget/measured-costs.ts')

/** Writes the table that the budget reads; all boards must have been measured. */
export function writeCosts(table: Record<string, OperationCosts>): void {
  const missing = ['avr', 'm0', 'm3'].filter((name) => !(name in table))
  if (missing.length > 0) throw new Error(`not written: ${missing.join(', ')} not measured`)
  const rows = Object.entries(table).map(([name, costs]) => {
    const fields = Object.entries(costs).map(
      ([key, value]) => `    ${key}: ${typeof value === 'string' ? `'${value}'` : value},`,
    )
    return `  ${name}: {\n${fields.join('\n')}\n  },`
  })
  writeFileSync(
    FILE,
    `import type { CoreKind, OperationCosts } from './costs'

/** Written by \`npm run target -- --write\` from emulated boards; not by hand. */
export const MEASURED_COSTS: Record<CoreKind, OperationCosts> = {
${rows.join('\n')}
}
`,
  )
}
