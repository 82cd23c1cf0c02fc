import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { ok, type Result } from '../../shared/model/result'
import { type CutSeries, dimensionsToCounts } from './cut-series'
import { datasetFolder } from './root'
import { type LabelledSeries, parseTsFormat } from './ts-format'

/** A set of the UEA archive with the split it is published with. */
export interface UeaSet {
  name: string
  train: CutSeries[]
  test: CutSeries[]
  labels: string[]
  /** Bit i set: axis i is in the set. */
  channelMask: number
  /** Counts of one unit of the file, accelerometer and gyroscope. */
  countsPerUnit: [number, number]
}

/** Training values are spread over this, which leaves a factor of two before int16 saturates. */
const FULL_COUNTS = 16384

/**
 * Loads TRAIN and TEST. The files give no sensitivities, so one scale a sensor is taken from the
 * largest value in TRAIN alone; TEST is scaled by the same and saturates where it goes beyond.
 */
export function loadUea(name: string): Result<UeaSet> {
  const folder = datasetFolder(`UEA_${name}`)
  if (!folder.ok) return folder
  const train = readPart(folder.value, `${name}_TRAIN.ts`)
  if (!train.ok) return train
  const test = readPart(folder.value, `${name}_TEST.ts`)
  if (!test.ok) return test
  const countsPerUnit: [number, number] = [scaleOf(train.value, 0, 3), scaleOf(train.value, 3, 6)]
  const dimensions = train.value[0]?.dimensions.length ?? 0
  return ok({
    name,
    train: train.value.map((series) => toCut(series, countsPerUnit)),
    test: test.value.map((series) => toCut(series, countsPerUnit)),
    labels: [...new Set(train.value.map((series) => series.label))].sort(),
    channelMask: (1 << Math.min(dimensions, 6)) - 1,
    countsPerUnit,
  })
}

function readPart(folder: string, file: string): Result<LabelledSeries[]> {
  return parseTsFormat(readFileSync(join(folder, file), 'utf8'), file)
}

function toCut(series: LabelledSeries, countsPerUnit: [number, number]): CutSeries {
  return {
    label: series.label,
    tester: '',
    counts: dimensionsToCounts(series.dimensions, countsPerUnit),
  }
}

function scaleOf(all: LabelledSeries[], from: number, to: number): number {
  let largest = 0
  for (const series of all) {
    for (const values of series.dimensions.slice(from, to)) {
      for (const value of values) largest = Math.max(largest, Math.abs(value))
    }
  }
  return largest > 0 ? FULL_COUNTS / largest : 1
}
