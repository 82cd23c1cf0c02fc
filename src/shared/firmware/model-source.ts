import { strToU8 } from 'fflate'
import { kernelTable } from '../format/kernel-bytes'
import type { TrainedModel } from '../model/evaluation'
import type { Library } from '../model/library'
import { channelCount, type RecogniserModel, rowValues } from '../model/recogniser-model'
import { commentText, identifierTails, numberRows, stringLiteral } from './c-text'

/** What the generated files say of where they come from. */
export interface ModelOrigin {
  library: Library
  trained: TrainedModel
  /** For people, such as the name and version of the app. */
  generatedFrom: string
}

const SCALE_MODES = ['MVW_SCALE_FIXED', 'MVW_SCALE_GROUP', 'MVW_SCALE_CHANNEL']
const COSTS = ['MVW_COST_ABSOLUTE', 'MVW_COST_SQUARED']
const AXES_C = ['MVW_AXIS_X', 'MVW_AXIS_Y', 'MVW_AXIS_Z']

function banner({ library, trained, generatedFrom }: ModelOrigin, what: string): string {
  const { target } = library
  return `/*
 * ${what}
 * Made by ${commentText(generatedFrom)} from the library "${commentText(library.name)}". Do not edit: train and
 * export again.
 *
 * Model, SHA-256 of its bytes: ${trained.hash}
 * Target: ${commentText(target.name)}, ${target.rateHz} Hz,
 *   accelerometer +-${target.accel.fullScale} g at ${target.accel.nanoPerLsb} ng a count,
 *   gyroscope +-${target.gyro.fullScale} deg/s at ${target.gyro.nanoPerLsb} ndeg/s a count.
 */`
}

/** Counts at zero input of the board that was calibrated; noughts without a calibration. */
function zeroOf({ target }: Library): readonly number[] {
  return target.calibration?.zero ?? [0, 0, 0, 0, 0, 0]
}

/** The rest of a calibration, for firmware that wants it; the recogniser does not need it. */
function correctionText({ target }: Library): string {
  if (target.calibration === undefined) return ''
  return `
/* Gains and cross-axis terms of the same board: true accelerometer counts are this 3 x 3 matrix, rows
 * first, times (counts - zero), over 16384. Optional: the recogniser takes samples without it. */
#define MODEL_ACCEL_CORRECTION_Q14 \\
  { ${target.calibration.correctionQ14.join(', ')} }
`
}

/** `model.h`: gestures by name, sizes of the buffers, the sensor it was trained for. */
export function modelHeader(origin: ModelOrigin): string {
  const { model, hash } = origin.trained
  const { board, segmenter: s, normaliser: n } = model
  const names = model.gestures.map(({ name }) => name)
  const gestures = identifierTails(names)
    .map((tail, index) => {
      const said = commentText(names[index] ?? '')
      return `  MODEL_GESTURE_${tail} = ${index}, /* ${said} */`
    })
    .join('\n')
  return `${banner(origin, 'The model of this prop.')}
#ifndef MODEL_H
#define MODEL_H

#include "movewright.h"

/* Value of mvw_event.gesture. */
enum model_gesture {
${gestures}
  MODEL_GESTURE_COUNT = ${names.length}
};

/* 1: movements are cut by a button (mvw_button), 0: by motion. */
#define MODEL_BUTTON ${model.button ? 1 : 0}

/* Buffers for mvw_init():
 *   int16_t ring[MODEL_RING_SAMPLES][MVW_AXES];
 *   int16_t query[MODEL_QUERY_VALUES];
 *   uint32_t row[MODEL_ROW_VALUES]; */
#define MODEL_RING_SAMPLES MVW_RING_SAMPLES(${s.maxLength}u, ${s.offHold}u, ${s.accelLag}u)
#define MODEL_QUERY_VALUES ${n.length * channelCount(n)}u
#define MODEL_ROW_VALUES ${rowValues(model)}u

/* The sensor's setting the model was trained for, as an initialiser of mvw_board: output data rate
 * in mHz, 1e-9 g and 1e-9 deg/s a count, counts at zero input. */
#define MODEL_BOARD \\
  { ${board.rateMillihertz}u, ${board.accelNgPerLsb}u, ${board.gyroNdpsPerLsb}u, {0, 0, 0, 0, 0, 0} }

/* The same for the board at hand: counts at zero input as its calibration found them. */
#define MODEL_CALIBRATED_BOARD \\
  { ${board.rateMillihertz}u, ${board.accelNgPerLsb}u, ${board.gyroNdpsPerLsb}u, {${zeroOf(origin.library).join(', ')}} }
${correctionText(origin.library)}
/* Bytes of model/model.bin, the same model for the loader. */
#define MODEL_BYTES ${origin.trained.bytes.length}u

/* Says which model this is; Movewright shows the same on the phone. */
#define MODEL_SHA256 "${hash}"

extern const mvw_model model;

/* Name as given on the phone, UTF-8; "" when there is no such gesture. */
const char *model_gesture_name(uint8_t gesture);

#endif
`
}

/** `model.c`: templates, thresholds and settings as constant tables. */
export function modelSource(origin: ModelOrigin): string {
  const { model } = origin.trained
  const literals = model.gestures.map(({ name }) => `    ${stringLiteral(name, strToU8)},`)
  return `${banner(origin, 'Tables of the model.')}
#include "model.h"

${templateTable(model)}${kernelRows(model)}
/* First template, number of templates, threshold (largest distance). */
static const mvw_gesture gestures[] MVW_FLASH = {
${gestureRows(model)}
};

const mvw_model model = {
${modelFields(model)}
};

static const char *const names[] = {
${literals.join('\n')}
};

const char *model_gesture_name(uint8_t gesture) {
  return gesture < MODEL_GESTURE_COUNT ? names[gesture] : "";
}
`
}

function templateCount(model: RecogniserModel): number {
  return model.gestures.reduce((sum, gesture) => sum + gesture.templates.length, 0)
}

function templateTable(model: RecogniserModel): string {
  const count = templateCount(model)
  if (count === 0) return ''
  return `/* ${count} templates of ${model.normaliser.length} points x ${channelCount(model.normaliser)} channels. */
static const int8_t templates[] MVW_FLASH = {
${templateRows(model)}
};
`
}

function kernelRows({ kernel, gestures }: RecogniserModel): string {
  if (kernel === null) return ''
  const table = kernelTable(kernel, gestures.length)
  return `
/* ${kernel.features.length} kernel features; layout in mvw_model.h. */
static const uint8_t kernel[] MVW_FLASH = {
${numberRows(table)}
};
`
}

function templateRows(model: RecogniserModel): string {
  const blocks = model.gestures.flatMap((gesture) =>
    gesture.templates.map(
      (template, index) =>
        `    /* ${commentText(gesture.name)}, ${index + 1} of ${gesture.templates.length} */\n${numberRows(template)}`,
    ),
  )
  return blocks.join('\n')
}

function gestureRows(model: RecogniserModel): string {
  let first = 0
  const rows = model.gestures.map((gesture) => {
    const row = `    {${first}u, ${gesture.templates.length}u, ${gesture.threshold}u}, /* ${commentText(gesture.name)} */`
    first += gesture.templates.length
    return row
  })
  return rows.join('\n')
}

function modelFields(model: RecogniserModel): string {
  const { segmenter: s, normaliser: n } = model
  const flags = [
    ...(model.rollAlign ? ['MVW_FLAG_ROLL_ALIGN'] : []),
    ...(model.button ? ['MVW_FLAG_BUTTON'] : []),
  ]
  const fields: [string, string | number][] = [
    ['version', 'MVW_MODEL_VERSION'],
    ['flags', flags.join(' | ') || 0],
    ['board', 'MODEL_BOARD'],
    [
      'segmenter',
      `{.accel_weight = ${s.accelWeight}u, .gyro_weight = ${s.gyroWeight}u,
                  .on_threshold = ${s.onThreshold}u, .off_threshold = ${s.offThreshold}u,
                  .on_hold = ${s.onHold}u, .off_hold = ${s.offHold}u,
                  .min_length = ${s.minLength}u, .max_length = ${s.maxLength}u,
                  .pre_roll = ${s.preRoll}u, .refractory = ${s.refractory}u,
                  .accel_lag = ${s.accelLag}u, .smooth_shift = ${s.smoothShift}u,
                  .rest_shift = ${s.restShift}u}`,
    ],
    [
      'normaliser',
      `{.length = ${n.length}u, .channel_mask = ${n.channelMask}u, .centre_mask = ${n.centreMask}u,
                   .scale_mode = ${SCALE_MODES[n.scaleMode]},
                   .gain = {${n.gain.join(', ')}}, .gravity_gain = ${n.gravityGain}u,
                   .floor = {${n.floor.join(', ')}}}`,
    ],
    ['long_axis', AXES_C[model.longAxis] ?? 0],
    ['roll_min_percent', `${model.rollMinPercent}u`],
    ['band', `${model.band}u`],
    ['cost', COSTS[model.cost] ?? 0],
    ['margin_percent', `${model.marginPercent}u`],
    ['gesture_count', 'MODEL_GESTURE_COUNT'],
    ['template_count', `${templateCount(model)}u`],
    ['gestures', 'gestures'],
    ['templates', templateCount(model) === 0 ? 0 : 'templates'],
    ['kernel_features', `${model.kernel?.features.length ?? 0}u`],
    ['kernel_pools', `${model.kernel?.pools ?? 0}u`],
    ['log_weight', `${model.kernel?.logWeight ?? 0}u`],
    ['kernel', model.kernel === null ? 0 : 'kernel'],
  ]
  return fields.map(([name, value]) => `    .${name} = ${value},`).join('\n')
}
