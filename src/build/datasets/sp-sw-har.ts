import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { ok, type Result } from '../../shared/model/result'
import { AXES, type SampleBlock } from '../../shared/model/sample'
import { datasetFolder } from './root'

/** A recording of someone walking, turning, sitting down, sitting and standing up. */
export interface DailyRecording {
  subject: string
  where: 'watch' | 'phone'
  samples: SampleBlock
}

const FILE_NAME = /^(s\d+)_\d+_(sw|sp)\.csv$/
const DEGREES = 180 / Math.PI
/** Shorter files hold nothing that could be counted an hour. */
const LEAST_SAMPLES = 100

/**
 * Watch and phone recordings of Matey-Sanz, Casteleyn and Granell (Data in Brief, 109809, 2023):
 * m/s² with gravity and rad/s at about 100 Hz. The phone's time stamps come in bursts, so samples
 * are spread evenly between the first and the last.
 */
export function loadDailyRecordings(): Result<DailyRecording[]> {
  const folder = datasetFolder('sp_sw_har')
  if (!folder.ok) return folder
  const data = join(folder.value, 'DATA')
  const recordings: DailyRecording[] = []
  for (const subject of existsSync(data) ? readdirSync(data).sort() : []) {
    for (const file of readdirSync(join(data, subject)).sort()) {
      const match = FILE_NAME.exec(file)
      if (match === null) continue
      const samples = readSamples(readFileSync(join(data, subject, file), 'utf8'))
      if (samples.tMs.length < LEAST_SAMPLES) continue
      recordings.push({ subject, where: match[2] === 'sw' ? 'watch' : 'phone', samples })
    }
  }
  return ok(recordings)
}

/** Columns: accelerometer x y z, gyroscope x y z, time in ms, label. */
function readSamples(text: string): SampleBlock {
  const rows = text
    .split('\n')
    .slice(1)
    .map((line) =>
      line
        .split(',')
        .slice(0, AXES + 1)
        .map(Number),
    )
    .filter((row) => row.length === AXES + 1 && row.every(Number.isFinite))
  const duration = (rows.at(-1)?.[AXES] ?? 0) - (rows[0]?.[AXES] ?? 0)
  const count = duration > 0 ? rows.length : 0
  return {
    tMs: Float64Array.from({ length: count }, (_, i) => (duration * i) / (count - 1)),
    values: Float32Array.from({ length: count * AXES }, (_, at) => {
      const value = rows[Math.floor(at / AXES)]![at % AXES]!
      return at % AXES < 3 ? value : value * DEGREES
    }),
  }
}
