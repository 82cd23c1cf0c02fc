import { strFromU8, unzipSync } from 'fflate'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { type FirmwareInput, makeFirmwareBundle } from '../../../src/shared/firmware/bundle'
import { lightOf } from '../../../src/shared/light/library-light'
import type { FullLibrary } from '../../../src/shared/model/library'
import { describeWithTools, findTool, type Tool } from '../../support/tools'
import { firmwareOf } from './firmware-of'
import { smallLibrary } from './small-library'
import { Unpacked } from './unpacked'

const STRICT = ['-std=c99', '-Wall', '-Wextra', '-Wpedantic', '-Werror']

let full: FullLibrary
let input: FirmwareInput

beforeAll(async () => {
  full = await smallLibrary()
  input = await firmwareOf(full)
}, 120_000)

/** Unpacks for a group of tests and clears away behind it. */
function unpacked(
  change: (input: FirmwareInput) => FirmwareInput = (same) => same,
): () => Unpacked {
  let bundle: Unpacked
  beforeAll(() => {
    bundle = new Unpacked(change(input))
  })
  afterAll(() => bundle.dispose())
  return () => bundle
}

describe('firmware bundle', () => {
  test('has the same bytes for the same input', () => {
    expect(makeFirmwareBundle(input)).toEqual(makeFirmwareBundle(input))
  })

  test('holds the sources of the core as they are', () => {
    const bundle = makeFirmwareBundle(input)
    const files = bundle.ok ? unzipSync(bundle.value) : {}
    for (const [name, text] of Object.entries(input.coreFiles)) {
      expect(strFromU8(files[`core/${name}`] ?? new Uint8Array())).toBe(text)
    }
  })

  test('has a vector for each gesture, each border and each refusal', () => {
    const names = input.vectors.map(({ name }) => name)
    const gestures = names.filter((name) => name.startsWith('gesture-'))
    expect(gestures.length).toBe(input.trained.model.gestures.length)
    for (const name of [
      'just-inside',
      'just-outside',
      'longest',
      'shortest',
      'back-to-back',
      'reset-between',
      'refused-version',
      'refused-rate',
      'taken-rate',
      'refused-accel-range',
      'refused-gyro-range',
      'refused-ring',
      'refused-query',
      'refused-row',
      'bytes-truncated',
      'bytes-altered',
      'bytes-version',
      'bytes-whole',
      'still',
      'too-long',
      'extremes',
      'lowest',
      'vertical',
      'no-rest',
      'clipped',
    ]) {
      expect(names).toContain(name)
    }
    expect(new Set(names).size).toBe(names.length)
  })

  test('the vectors show what they are named for', () => {
    const log = (name: string) => input.vectors.find((vector) => vector.name === name)?.log ?? ''
    expect(log('refused-version')).toBe('init -2\nend 0\n')
    expect(log('refused-rate')).toBe('init -3\nend 0\n')
    expect(log('taken-rate')).toBe('init 0\nend 4\n')
    expect(log('refused-accel-range')).toBe('init -4\nend 0\n')
    expect(log('refused-gyro-range')).toBe('init -4\nend 0\n')
    for (const buffer of ['ring', 'query', 'row']) {
      expect(log(`refused-${buffer}`)).toBe('init -6\nend 0\n')
    }
    for (const damage of ['truncated', 'empty', 'too-long', 'altered']) {
      expect(log(`bytes-${damage}`)).toBe('read -7\ninit 0\nend 0\n')
    }
    expect(log('bytes-version')).toBe('read -2\ninit 0\nend 0\n')
    expect(log('bytes-range')).toBe('read -5\ninit 0\nend 0\n')
    expect(log('bytes-whole')).toBe('read 0\ninit 0\nend 0\n')
    expect(log('still')).toBe('init 0\nend 512\n')
    expect(log('too-long')).toMatch(/event \d+ \d+ reject - long /)
    expect(log('vertical')).toContain(' vertical ')
    expect(log('no-rest')).toContain(' no-rest ')
    expect(log('just-outside')).toContain(' far ')
    expect(log('back-to-back').match(/^event .* gesture /gm)?.length).toBeGreaterThanOrEqual(2)
  })

  test('is refused without vectors, and without the sources it needs', () => {
    expect(makeFirmwareBundle({ ...input, vectors: [] })).toMatchObject({
      code: 'firmware/no-vectors',
    })
    const { 'movewright.h': _, ...coreFiles } = input.coreFiles
    expect(makeFirmwareBundle({ ...input, coreFiles })).toMatchObject({
      code: 'firmware/sources',
      message: expect.stringContaining('movewright.h'),
    })
  })
})

describeWithTools('unpacked, by gcc', ['gcc', 'make'], () => {
  const bundle = unpacked()

  test('make test compiles strictly and agrees with the phone to the byte', () => {
    const { status, output } = bundle().run('make', 'test', 'CC=gcc')
    expect(output).toContain(`${input.vectors.length} of ${input.vectors.length} vectors agree`)
    expect(output).toContain(STRICT.join(' '))
    expect(output).toContain(`model ${input.trained.hash}`)
    expect(status).toBe(0)
  })

  test('the main loop answers a gesture with its colour', () => {
    const { output } = bundle().run('make', 'test', 'CC=gcc')
    expect(output).toMatch(/^light \d+ \d+ \d+ tone 0 shake 0$/m)
  })

  test('the sleeping main loop measures the rate on the first samples, answers, and is refused a wrong one', () => {
    bundle().run('make', 'CC=gcc')
    const still = 'vectors/*-still.in'
    const fifo = (...input: string[]) =>
      bundle().run('sh', '-c', `cat ${input.join(' ')} | build/example/prop-fifo`)
    expect(fifo(still, 'vectors/01-gesture-raise.in').output).toMatch(/^light \d+ \d+ \d+ /m)
    expect(fifo(still).status).toBe(0)
    // Without samples there is no rate to measure: nought, which mvw_init() refuses (MVW_E_RATE).
    expect(fifo('/dev/null').status).toBe(3)
  })

  test('says of each vector what it shows, what it was made from and what must come of it', () => {
    const { output } = bundle().run('cat', 'vectors/README.md')
    expect(output).toMatch(
      /^\| 01 \| A take of gesture 0 [^|]* \| take \S+ of tester \w+ \| Raise \(/m,
    )
    expect(output).toMatch(
      /refused-ring|A ring one sample too small [^|]*\|[^|]*\| start refused \(-6\)/,
    )
    const rows = output.match(/^\| \d\d \|/gm) ?? []
    expect(rows).toHaveLength(input.vectors.length)
  })

  test('its README gets to the board in about sixty lines besides tables', () => {
    const { output } = bundle().run('cat', 'README.md')
    const text = output.split('\n').filter((line) => line !== '' && !line.startsWith('|'))
    expect(text.length).toBeLessThanOrEqual(60)
  })

  test('the log printed is the log packed, line by line', () => {
    const { output } = bundle().run('build/run-vectors', 'vectors/01-gesture-raise.in')
    expect(output).toContain(`vector 01-gesture-raise\n${input.vectors[0]?.log}# ok\ndone\n`)
  })

  test('a log that differs in one figure is found, and the exit status says so', () => {
    const log = input.vectors[0]?.log ?? ''
    bundle().write('vectors/01-gesture-raise.log', log.replace(/ (\d+)\nend/, ' 1$1\nend'))
    const { status, output } = bundle().run('build/run-vectors', 'vectors/01-gesture-raise.in')
    bundle().write('vectors/01-gesture-raise.log', log)
    expect(status).toBe(1)
    expect(output).toContain('expected event')
  })

  test('a log that goes on, or ends early, is found', () => {
    const log = input.vectors[0]?.log ?? ''
    for (const wrong of [`${log}event 1\n`, log.split('\n')[0] ?? '']) {
      bundle().write('vectors/01-gesture-raise.log', wrong)
      expect(bundle().run('build/run-vectors', 'vectors/01-gesture-raise.in').status).toBe(1)
    }
    bundle().write('vectors/01-gesture-raise.log', log)
  })

  test('a vector that cannot be read is an error, not a pass', () => {
    expect(bundle().run('build/run-vectors', 'vectors/none.in').status).toBe(2)
    expect(bundle().run('build/run-vectors').status).toBe(2)
    bundle().write('bad.in', 'board 1 2\nhello\n')
    bundle().write('bad.log', '')
    expect(bundle().run('build/run-vectors', 'bad.in').status).toBe(2)
  })

  test('agrees also without optimisation and under address and undefined-behaviour checks', () => {
    const flags = '-O1 -g -fsanitize=address,undefined -fno-sanitize-recover=all'
    const { status, output } = bundle().run(
      'make',
      'test',
      'CC=gcc',
      'OUT=checked',
      `CFLAGS=${flags}`,
    )
    expect(output).toContain('vectors agree with the phone')
    expect(status).toBe(0)
  })
})

describeWithTools('unpacked, by clang', ['clang', 'make'], () => {
  const bundle = unpacked()

  test('make test compiles strictly and agrees with the phone to the byte', () => {
    const { status, output } = bundle().run('make', 'test', 'CC=clang')
    expect(output).toContain('vectors agree with the phone')
    expect(status).toBe(0)
  })
})

describeWithTools('unpacked, by cmake', ['cmake', 'gcc', 'make'], () => {
  const bundle = unpacked()

  test('builds, and ctest passes', () => {
    expect(bundle().run('cmake', '-B', 'out', '-S', '.').status).toBe(0)
    expect(bundle().run('cmake', '--build', 'out')).toMatchObject({ status: 0 })
    expect(bundle().run('ctest', '--test-dir', 'out', '--output-on-failure').output).toContain(
      '100% tests passed',
    )
  })
})

const BOARDS: { tool: Tool; flags: string[] }[] = [
  {
    tool: 'arm-none-eabi-gcc',
    flags: ['-mcpu=cortex-m0', '-mthumb', '-Os', '-ffreestanding'],
  },
  { tool: 'avr-gcc', flags: ['-mmcu=atmega1284p', '-Os'] },
]

for (const { tool, flags } of BOARDS) {
  describeWithTools(`unpacked, by ${tool}`, [tool], () => {
    const bundle = unpacked()

    test('core, model, effects and main loop compile strictly', () => {
      const sources = [
        ...Object.keys(input.coreFiles).flatMap((name) =>
          name.endsWith('.c') ? [`core/${name}`] : [],
        ),
        'model/model.c',
        'effects/effects.c',
        'effects/effect_table.c',
        'example/main.c',
      ]
      const folders = ['-Icore', '-Imodel', '-Ieffects', '-Iexample']
      const compiler = findTool(tool) ?? tool
      expect(bundle().run(compiler, ...STRICT, ...flags, ...folders, '-c', ...sources)).toEqual({
        status: 0,
        output: '',
      })
    })
  })
}

describeWithTools('names that C does not like', ['gcc', 'make'], () => {
  const names = [
    '*/ int x; /* *\\ int y; \\*',
    'a??/',
    '"quoted\\',
    '持ち上げる',
    'line\nbreak',
    '',
    'count',
    'COUNT',
  ]
  const bundle = unpacked((plain) => {
    const gestures = plain.trained.model.gestures.map((gesture, index) => ({
      ...gesture,
      name: names[index] ?? gesture.name,
    }))
    const model = { ...plain.trained.model, gestures }
    const nasty = '*/ #error *\\ #error ??/\n\\'
    const lightFindings = ['too bright']
    const acknowledgement = { text: nasty, at: '2026-11-25T11:04:44Z', covers: lightFindings }
    const library = {
      ...plain.library,
      name: nasty,
      target: { ...plain.library.target, name: nasty },
      light: { ...lightOf(plain.library), acknowledgement },
    }
    return { ...plain, library, lightFindings, trained: { ...plain.trained, model } }
  })

  test('compile all the same, and the firmware has them back', () => {
    const main = `#include <stdio.h>
#include "model.h"
int main(void) {
  for (uint8_t i = 0; i < MODEL_GESTURE_COUNT; i++) printf("[%s]", model_gesture_name(i));
  printf("[%s]", model_gesture_name(MODEL_GESTURE_COUNT));
  return 0;
}
`
    bundle().write('names.c', main)
    expect(bundle().run('make', 'test', 'CC=gcc').status).toBe(0)
    const light = [...STRICT, '-Icore', '-Imodel', '-Ieffects', '-c', 'effects/effect_table.c']
    expect(bundle().run('gcc', ...light)).toEqual({ status: 0, output: '' })
    const args = [...STRICT, '-Icore', '-Imodel', 'names.c', 'model/model.c', '-o', 'names']
    expect(bundle().run('gcc', ...args)).toEqual({ status: 0, output: '' })
    const expected = input.trained.model.gestures.map(({ name }, index) => names[index] ?? name)
    expect(bundle().run('./names').output).toBe(`${expected.map((name) => `[${name}]`).join('')}[]`)
  })
})

describeWithTools('a model whose movements are cut by a button', ['gcc', 'make'], () => {
  let pressed: FirmwareInput
  let bundle: Unpacked
  beforeAll(async () => {
    const training = { ...full.library.training, segmentation: 'button' as const }
    pressed = await firmwareOf({ ...full, library: { ...full.library, training } })
    bundle = new Unpacked(pressed)
  }, 120_000)
  afterAll(() => bundle.dispose())

  test('has vectors that press the button, and agrees with the phone to the byte', () => {
    const vector = pressed.vectors.find(({ name }) => name === 'gesture-raise')
    expect(vector?.steps.filter((step) => 'button' in step).length).toBe(2)
    expect(vector?.log).toMatch(/ gesture 0 none /)
    const { status, output } = bundle.run('make', 'test', 'CC=gcc')
    expect(output).toContain('vectors agree with the phone')
    expect(status).toBe(0)
  })

  test('the main loop asks for the button', () => {
    const { output } = bundle.run('make', 'test', 'CC=gcc')
    expect(output).toMatch(/^light \d+ \d+ \d+ tone 0 shake 0$/m)
  })
})
