import { AXES, type SampleBlock } from '../../shared/model/sample'

const WIDTH = 400
const HEIGHT = 100

/** Size of acceleration and of turning over time, as two thin lines; for finding one's way only. */
export function SmallTrace({ samples, durationMs }: { samples: SampleBlock; durationMs: number }) {
  return (
    <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} preserveAspectRatio="none" aria-hidden="true">
      <path class="small-trace" d={sizePath(samples, durationMs, 0)} />
      <path class="small-trace small-trace-dashed" d={sizePath(samples, durationMs, 3)} />
    </svg>
  )
}

/** Path of the length of the three axes from `first`, scaled to the height. */
function sizePath({ tMs, values }: SampleBlock, durationMs: number, first: 0 | 3): string {
  const sizes = Array.from(tMs, (_, row) => {
    const at = row * AXES + first
    return Math.hypot(values[at] ?? 0, values[at + 1] ?? 0, values[at + 2] ?? 0)
  })
  const top = Math.max(...sizes, 1e-6)
  return sizes
    .map((size, row) => {
      const x = (WIDTH * (tMs[row] ?? 0)) / Math.max(durationMs, 1)
      const y = HEIGHT - 4 - ((HEIGHT - 8) * size) / top
      return `${row === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`
    })
    .join('')
}
