/** What a self-test printed: the log itself, and the measurements between its lines. */
export interface SelfTestOutput {
  /** Lines of the log, each ended by LF; the same on every build. */
  log: string
  /** Largest and mean work of `mvw_push()` by kind of sample, in ticks of the build's counter. */
  costs: Costs | null
}

export interface Costs {
  decisions: number[]
  idle: Mean
  moving: Mean
  /** Bytes of stack that `mvw_push()` took at most. */
  stackBytes: number
}

export interface Mean {
  samples: number
  ticks: number
}

/** Takes apart what a self-test printed; '>' are its prompts, '#' lines are not of the log. */
export function readOutput(printed: string): SelfTestOutput {
  const lines = printed
    .replaceAll('\r', '')
    .split('\n')
    .map((line) => line.replace(/^>+/, ''))
    .filter((line) => line !== '')
  const log = lines.filter((line) => !line.startsWith('#')).map((line) => `${line}\n`)
  return { log: log.join(''), costs: costsOf(lines) }
}

function costsOf(lines: string[]): Costs | null {
  const costs: Costs = {
    decisions: [],
    idle: { samples: 0, ticks: 0 },
    moving: { samples: 0, ticks: 0 },
    stackBytes: 0,
  }
  let found = false
  for (const line of lines) {
    const [, kind, first = '', second = ''] =
      line.match(/^# (decision|idle|moving|stack) (\d+) (\d+)$/) ?? []
    if (kind === undefined) continue
    found = true
    if (kind === 'decision') costs.decisions.push(Number(second))
    else if (kind === 'stack') costs.stackBytes = Math.max(costs.stackBytes, Number(first))
    else add(kind === 'idle' ? costs.idle : costs.moving, Number(first), Number(second))
  }
  return found ? costs : null
}

function add(mean: Mean, samples: number, ticks: number): void {
  mean.samples += samples
  mean.ticks += ticks
}

/** Joins the outputs of runs that each took a part of the vectors, in order. */
export function joinOutputs(outputs: SelfTestOutput[]): SelfTestOutput {
  const parts = outputs.map(({ log }) => log.split('\n').slice(0, -1))
  const lines = parts.flatMap((part, index) => [
    ...(index === 0 ? part.slice(0, 2) : []),
    ...part.slice(2, -1),
  ])
  const log = [...lines, 'done'].map((line) => `${line}\n`).join('')
  const all = outputs.flatMap(({ costs }) => (costs ? [costs] : []))
  if (all.length === 0) return { log, costs: null }
  const sum = (kind: 'idle' | 'moving'): Mean => ({
    samples: all.reduce((total, costs) => total + costs[kind].samples, 0),
    ticks: all.reduce((total, costs) => total + costs[kind].ticks, 0),
  })
  const costs: Costs = {
    decisions: all.flatMap(({ decisions }) => decisions),
    idle: sum('idle'),
    moving: sum('moving'),
    stackBytes: Math.max(...all.map(({ stackBytes }) => stackBytes)),
  }
  return { log, costs }
}
