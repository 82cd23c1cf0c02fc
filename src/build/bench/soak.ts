import { buildApart } from '../built-apart'
import { launchChromium } from '../chromium'
import { serveFolder } from '../static-server'
import { installLine, missingTools } from '../tools'
import type { BenchResult, Figure } from './figure'
import { SoakedApp } from './soak/drive'
import { growthOf } from './soak/growth'
import type { Reading } from './soak/readings'

/** The engine's machine code grows for hours and is no leak: so what grows is what the app holds. */
export const INTERPRETED = ['--js-flags=--no-opt --no-sparkplug --no-maglev']

/** Four hours: a show of an evening, with recording between. */
const ROUNDS = 16
const ROUND = { stageMinutes: 12, recordMinutes: 3 }

/** Four simulated hours of the built app in Chromium: what must level off, and whether it did. */
export async function benchSoak(): Promise<BenchResult> {
  const missing = missingTools(['chromium'])
  if (missing.length > 0) {
    return { figures: [], skipped: [`the soak needs: ${installLine(missing)}`] }
  }
  const built = buildApart()
  const server = await serveFolder({ folder: built.folder, host: '127.0.0.1', port: 0 })
  const browser = await launchChromium(INTERPRETED)
  const began = performance.now()
  try {
    const app = await SoakedApp.open(browser, `http://localhost:${server.port}/`)
    const readings: Reading[] = []
    for (let round = 0; round < ROUNDS; round++) readings.push(await app.spend(ROUND))
    const minutes = (performance.now() - began) / 60_000
    return {
      figures: [
        ...levelFigures(readings),
        { figure: 'soak_movements_answered', value: await app.answered(), unit: 'movements' },
        { figure: 'soak_takes_recorded_and_dropped', value: app.takes, unit: 'takes' },
        hoursFigure(minutes),
      ],
      skipped: [],
    }
  } finally {
    await browser.close()
    await server.close()
    built.remove()
  }
}

function levelFigures(readings: readonly Reading[]): Figure[] {
  const growth = (figure: string, of: (reading: Reading) => number, unit: string): Figure => {
    const values = readings.map(of)
    const note = `last quarter less second quarter; first ${values[0]}, last ${values.at(-1)}`
    return { figure, value: growthOf(values), unit, note }
  }
  const most = (of: (reading: Reading) => number) => Math.max(...readings.map(of))
  const rows = (reading: Reading) => Object.values(reading.rows).reduce((a, b) => a + b, 0)
  const journals = ({ rows }: Reading) => rows.journals ?? Number.NaN
  return [
    growth('stage_heap_growth_bytes', ({ heapBytes }) => heapBytes, 'B'),
    growth('stage_node_growth', ({ nodes }) => nodes, 'nodes'),
    growth('stage_listener_growth', ({ listeners }) => listeners, 'listeners'),
    growth('soak_database_row_growth', rows, 'rows'),
    growth('soak_database_growth_bytes', ({ databaseBytes }) => databaseBytes, 'B'),
    { figure: 'soak_workers_most', value: most(({ workers }) => workers), unit: 'workers' },
    { figure: 'soak_journals_left_most', value: most(journals), unit: 'journals' },
  ]
}

function hoursFigure(minutes: number): Figure {
  const value = (ROUNDS * (ROUND.stageMinutes + ROUND.recordMinutes)) / 60
  return {
    figure: 'soak_simulated_hours',
    value,
    unit: 'h',
    note: `in ${minutes.toFixed(1)} minutes`,
  }
}
