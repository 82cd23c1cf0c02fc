import { strFromU8, strToU8 } from 'fflate'
import { applyMapping } from '../../shared/format/csv-import'
import { previewCsv } from '../../shared/format/csv-preview'
import { AXES } from '../../shared/model/sample'
import { defaultTarget } from '../../shared/target/default-target'
import { mutateBytes, mutateText } from './mutate'
import type { FuzzSubject, Verdict } from './round-trip'

const LOG = `time_ms,ax,ay,az,gx,gy,gz
${Array.from({ length: 12 }, (_, i) => `${i * 10},${i / 10},0.2,9.8,${i},-2,0.5`).join('\n')}
`

/** A log that a board printed: what is taken from it is finite and in the order of time. */
export function fuzzedLog(): FuzzSubject {
  return {
    name: 'log',
    share: 0.1,
    alter: (random) =>
      random.integer(2) === 0
        ? strToU8(mutateText(LOG, random))
        : mutateBytes(strToU8(LOG), random),
    judge: (bytes) => judge(strFromU8(bytes)),
  }
}

function judge(text: string): Verdict {
  const preview = previewCsv(text, defaultTarget(), 'log.csv')
  if (!preview.ok) return 'refused'
  const read = applyMapping(text, preview.value.mapping, 'log.csv')
  if (!read.ok) return 'refused'
  const { tMs, values } = read.value
  if (values.length !== tMs.length * AXES) return { wrong: 'samples and times differ in number' }
  if (![...values, ...tMs].every(Number.isFinite)) return { wrong: 'a value is not finite' }
  const ordered = tMs.every((t, i) => i === 0 || t > (tMs[i - 1] ?? Number.NEGATIVE_INFINITY))
  return ordered ? 'same' : { wrong: 'times do not rise' }
}
