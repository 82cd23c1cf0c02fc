import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { repositoryPath } from '../../../src/build/paths'
import { type FirmwareInput, makeFirmwareBundle } from '../../../src/shared/firmware/bundle'
import { countLightMemory, LIGHT_CODE_BYTES } from '../../../src/shared/firmware/memory'
import { defaultLight } from '../../../src/shared/light/defaults'
import { withKind } from '../../../src/shared/light/edit'
import type { FullLibrary } from '../../../src/shared/model/library'
import { LIGHT_KINDS } from '../../../src/shared/model/light'
import { describeWithTools } from '../../support/tools'
import { answer, blinking, effect } from '../light/examples'
import { firmwareOf } from './firmware-of'
import { smallLibrary } from './small-library'
import { Unpacked } from './unpacked'

let full: FullLibrary
let input: FirmwareInput

/** Every kind of effect, tunes and vibrations, on the demo's gestures. */
beforeAll(async () => {
  full = await smallLibrary()
  const gestures = full.library.gestures.map((gesture, i) => {
    const light = withKind(
      effect({ kind: 'steady', colour: [255 - i * 30, i * 30, 40] }),
      LIGHT_KINDS[i % 7]!,
    )
    const sound = [{ value: 440 + i, ms: 90 }]
    return { ...gesture, answer: { light, sound, vibration: [{ value: 200, ms: 50 + i }] } }
  })
  full.library = { ...full.library, gestures }
  input = await firmwareOf(full)
}, 120_000)

const LIGHT_CORE = ['mvw_light.c', 'mvw_light_check.c', 'mvw_lightness.c', 'mvw_steps.c'].map(
  (name) => `core/${name}`,
)

/** Sizes of the structs as the counted bytes of the README claim them. */
const SIZES = `#include "effects.h"
#define CLAIM(name, what, bytes) char name[(what) == (bytes) ? 1 : -1];
CLAIM(effect, sizeof(mvw_light_effect), 20)
CLAIM(steps, sizeof(effect_steps), 4)
CLAIM(key, sizeof(mvw_light_key), 8)
CLAIM(step, sizeof(mvw_step), 4)
CLAIM(table, sizeof(mvw_light_table), 20)
CLAIM(state, sizeof(answer), STATE)
`

describeWithTools('light of the exported firmware, by gcc', ['gcc', 'make'], () => {
  let bundle: Unpacked
  beforeAll(() => {
    bundle = new Unpacked(input)
  })
  afterAll(() => bundle.dispose())

  test('make test says that it agrees with the phone', () => {
    const { status, output } = bundle.run('make', 'test', 'CC=gcc')
    expect(output).toContain('# light agrees with the phone')
    expect(status).toBe(0)
  })

  test('one step more in one brightness is found', () => {
    const path = 'effects/effect_table.c'
    const table = readFileSync(join(bundle.folder, path), 'utf8')
    const changed = table.replace(/(\{1, 0, 255, 0, )255,/, '$1254,')
    expect(changed).not.toBe(table)
    bundle.write(path, changed)
    const { status, output } = bundle.run('make', 'test', 'CC=gcc', 'OUT=changed')
    bundle.write(path, table)
    expect(output).toContain('# light differs')
    expect(status).not.toBe(0)
  })

  test('the main loop gives tone and vibration with the light', () => {
    bundle.run('make', 'CC=gcc')
    const { output } = bundle.run('sh', '-c', 'cat vectors/02-*.in | build/example/prop')
    expect(output).toMatch(/^light \d+ \d+ \d+ tone 441 shake 200$/m)
    expect(output).toMatch(/^light \d+ \d+ \d+ tone 0 shake 0$/m)
  })

  test('the timer is set up as the LED is described', () => {
    const header = readFileSync(join(bundle.folder, 'effects/effect_table.h'), 'utf8')
    expect(header).toContain('#define LIGHT_TOP 1023u')
    expect(header).toContain('#define LIGHT_PWM_HZ 4000u')
  })
})

describeWithTools('light in the budget', ['arm-none-eabi-gcc'], () => {
  let bundle: Unpacked
  beforeAll(() => {
    bundle = new Unpacked(input)
  })
  afterAll(() => bundle.dispose())

  test('counts the bytes that a compiler for a 32-bit board lays out', () => {
    const { stateBytes } = countLightMemory(full.library)
    bundle.write('sizes.c', SIZES.replace('STATE', String(stateBytes)))
    const flags = ['-mcpu=cortex-m0', '-mthumb', '-std=c99', '-Icore', '-Ieffects']
    expect(bundle.run('arm-none-eabi-gcc', ...flags, '-c', 'sizes.c')).toEqual({
      status: 0,
      output: '',
    })
  })
})

describeWithTools('code of the light', ['arm-none-eabi-gcc'], () => {
  test('takes about the bytes that the README names, for a Cortex-M0 at -Os', () => {
    const bundle = new Unpacked(input)
    const flags = ['-mcpu=cortex-m0', '-mthumb', '-Os', '-std=c99', '-ffreestanding', '-Icore']
    const objects = LIGHT_CORE.map((path) => path.replace(/^core\/(.*)c$/, '$1o'))
    bundle.run('arm-none-eabi-gcc', ...flags, '-c', ...LIGHT_CORE)
    const { output } = bundle.run('arm-none-eabi-size', '-t', ...objects)
    bundle.dispose()
    const text = Number(output.match(/^\s*(\d+).*\(TOTALS\)/m)?.[1])
    const code = text - countLightMemory(full.library).lightnessBytes
    expect(Math.abs(code - LIGHT_CODE_BYTES)).toBeLessThan(0.1 * LIGHT_CODE_BYTES)
  })
})

const CORTEX_MAIN = `#include <stdio.h>
#include "cortex_start.h"
#include "effect_table.h"
#include "light_vector.h"
int main(void) {
  host_call(HOST_WRITE_TEXT, light_vector() == LIGHT_VECTOR ? "light agrees\\n" : "light differs\\n");
  return 0;
}
`

const AVR_MAIN = `#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>
#include "effect_table.h"
#include "light_vector.h"
static void say(const char *text) {
  for (; *text; text++) {
    while (!(UCSR0A & (1 << UDRE0))) {
    }
    UDR0 = (uint8_t)*text;
  }
}
int main(void) {
  UCSR0B = 1 << TXEN0;
  say(light_vector() == LIGHT_VECTOR ? "light agrees\\n" : "light differs\\n");
  cli();
  sleep_mode();
  return 0;
}
`

const LIGHT = [...LIGHT_CORE, 'effects/light_vector.c', 'effects/effect_table.c']

describeWithTools(
  'light on an emulated Cortex-M0',
  ['arm-none-eabi-gcc', 'qemu-system-arm'],
  () => {
    let bundle: Unpacked
    beforeAll(() => {
      bundle = new Unpacked(input)
    })
    afterAll(() => bundle.dispose())

    test('agrees with the phone to the bit', () => {
      const port = repositoryPath('src/build/target/c')
      bundle.write('light_main.c', CORTEX_MAIN)
      const built = bundle.run(
        'arm-none-eabi-gcc',
        ...['-mcpu=cortex-m0', '-mthumb', '-Os', '-std=gnu99', '-ffreestanding', '-Icore'],
        ...['-Ieffects', `-I${port}`, '-nostartfiles', '-nostdlib', '-T', `${port}/cortex_m.ld`],
        ...[...LIGHT, `${port}/cortex_start.c`, 'light_main.c', '-lgcc', '-o', 'light.elf'],
      )
      expect(built).toEqual({ status: 0, output: '' })
      const { output } = bundle.run(
        'sh',
        '-c',
        'qemu-system-arm -M microbit -display none -monitor none -serial none -semihosting-config enable=on,target=native -kernel light.elf 2>&1',
      )
      expect(output).toContain('light agrees')
    })
  },
)

describeWithTools('light on an emulated 8-bit AVR', ['avr-gcc', 'simavr'], () => {
  let bundle: Unpacked
  beforeAll(() => {
    bundle = new Unpacked(input)
  })
  afterAll(() => bundle.dispose())

  test('agrees with the phone to the bit, its tables in flash', () => {
    bundle.write('light_main.c', AVR_MAIN)
    const flags = ['-mmcu=atmega1284p', '-DF_CPU=16000000UL', '-Os', '-std=gnu99', '-Wall']
    const built = bundle.run(
      'avr-gcc',
      ...[...flags, '-Icore', '-Ieffects', ...LIGHT, 'light_main.c', '-o', 'light.elf'],
    )
    expect(built).toEqual({ status: 0, output: '' })
    const { output } = bundle.run('sh', '-c', 'simavr -m atmega1284p -f 16000000 light.elf 2>&1')
    expect(output).toContain('light agrees')
  })
})

describe('light over a limit', () => {
  let over: FirmwareInput
  beforeAll(async () => {
    const gestures = full.library.gestures.map((gesture, i) =>
      i === 0
        ? { ...gesture, answer: { ...answer({}), light: blinking(9, [255, 255, 255]) } }
        : gesture,
    )
    const light = defaultLight()
    light.led.pwmHz = 490
    over = await firmwareOf({ ...full, library: { ...full.library, gestures, light } })
  }, 120_000)

  test('has findings for flashes and for PWM', () => {
    expect(over.lightFindings.join('\n')).toContain('9 flashes in a second')
    expect(over.lightFindings.join('\n')).toContain('PWM at 490 Hz: 100 % modulation, 39.2 %')
  })

  test('is packed only when every finding is acknowledged', () => {
    expect(makeFirmwareBundle(over)).toMatchObject({ ok: false, code: 'firmware/light' })
    const acknowledged = (covers: string[]): FirmwareInput => ({
      ...over,
      library: {
        ...over.library,
        light: {
          ...over.library.light!,
          acknowledgement: { text: 'A */ lamp behind glass.', at: '2026-11-25T11:04:44Z', covers },
        },
      },
    })
    expect(makeFirmwareBundle(acknowledged([...over.lightFindings.slice(1)])).ok).toBe(false)
    expect(makeFirmwareBundle(acknowledged([...over.lightFindings])).ok).toBe(true)
  })
})
