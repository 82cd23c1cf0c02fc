import { decisionWork, type OperationCosts } from '../budget/costs'
import { MEASURED_COSTS } from '../budget/measured-costs'
import { decisionOperations } from '../budget/operations'
import { identifierTails } from './c-text'
import { answeringLibrary, type LightOrigin, lightNote } from './light-note'
import { plain } from './markdown-text'
import {
  countLightMemory,
  countMemory,
  LIGHT_CODE_BYTES,
  TEACH_CODE_BYTES,
  teachRamBytes,
} from './memory'
import type { ModelOrigin } from './model-source'

/** The bundle's README.md: what it is, what it costs, how to test and build it in. */
export function bundleReadme(origin: LightOrigin, vectorCount: number): string {
  return [
    introduction(origin),
    testing(vectorCount),
    gestureTable(origin),
    costs(origin),
    limits(origin),
    lightSafety(origin),
    SAFETY,
  ].join('\n')
}

function introduction({ library, trained, generatedFrom }: ModelOrigin): string {
  const { target } = library
  return `# Firmware of "${plain(library.name)}"

C99 sources that find movements in the samples of a six-axis inertial sensor, name them and answer
with light. The recogniser in \`core/\` is the very code that ran on the phone; \`model/\` is what the
phone learned. Integers only, no heap, no operating system.

- Made by ${plain(generatedFrom)}
- Model (SHA-256): \`${trained.hash}\`
- Target: ${plain(target.name)}, ${target.rateHz} Hz; accelerometer ±${target.accel.fullScale} g, ${target.accel.nanoPerLsb} ng a count; gyroscope ±${target.gyro.fullScale} deg/s, ${target.gyro.nanoPerLsb} ndeg/s a count

| folder | holds |
|---|---|
| \`core/\` | the recogniser; start with \`movewright.h\` |
| \`model/\` | templates, thresholds and settings as constant tables; names of the gestures |
| \`effects/\` | light, tune and vibration of each gesture, at rest and to a rejected movement |
| \`example/\` | whole main loops; \`board.h\` is what they ask of your hardware |
| \`loader/\` | takes \`model/model.bin\` over a serial line, without compiling again |
| \`selftest/\` | runs the vectors, on a desk or on the board |
| \`vectors/\` | samples and the event log that must come of them; \`vectors/README.md\` says why each |
`
}

function gestureTable(origin: ModelOrigin): string {
  const { gestures } = origin.trained.model
  const answers = answeringLibrary(origin).gestures
  const tails = identifierTails(gestures.map(({ name }) => name))
  const rows = gestures.map(({ name, templates, threshold }, index) => {
    const light = answers[index]?.answer?.light
    const colour = light === undefined ? '' : `${light.kind} ${light.colour.join(', ')}`
    return `| ${index} | ${plain(name)} | \`MODEL_GESTURE_${tails[index]}\` | ${templates.length} | ${threshold} | ${colour} |`
  })
  return `## Gestures

| number | name | in C | templates | threshold | light: kind, shares of red, green, blue |
|---|---|---|---|---|---|
${rows.join('\n')}
`
}

function costs(origin: ModelOrigin): string {
  const { trained } = origin
  const memory = countMemory(trained.model)
  const light = countLightMemory(answeringLibrary(origin))
  const { avr, m0, m3 } = MEASURED_COSTS
  const operations = decisionOperations(trained.model)
  const work = (costs: OperationCosts) =>
    `${Math.round(decisionWork(operations, costs).total / 1000)},000 ${costs.unit}`
  return `## What it costs

| | bytes | |
|---|---|---|
| flash: code of the recogniser | ${m0.codeBytes} | measured, Cortex-M0, -Os; AVR ${avr.codeBytes} |
| flash: tables of the model | ${memory.templateBytes + memory.gestureBytes + memory.kernelBytes} | counted |
| flash: effects | ${light.tableBytes} | counted |
| flash: code of the light, lightness table | about ${LIGHT_CODE_BYTES + light.lightnessBytes} | measured, Cortex-M0, -Os |
| RAM: last samples | ${memory.ringBytes} | counted |
| RAM: scratch | ${memory.queryBytes + memory.rowBytes} | counted |
| RAM: \`mvw_state\` and stack of \`mvw_push()\` | ${m0.stateBytes} + ${m0.stackBytes} | measured, Cortex-M0 |
| teaching on the prop, if used: code, RAM for one slot and three takes | ${TEACH_CODE_BYTES} + ${teachRamBytes(trained.model)} | measured, Cortex-M0, -Os; counted |
| RAM: \`answer\` (light, tune, vibration) | ${light.stateBytes} | on a 32-bit part |

The sample that ends a movement also pays for the comparison, at most: Cortex-M0
${work(m0)}, Cortex-M3 ${work(m3)}, AVR ${work(avr)} (operations counted, their cost measured on
emulators, no template given up early). Other samples cost a few hundred instructions.

\`make size CC=arm-none-eabi-gcc SIZE=arm-none-eabi-size CFLAGS="-Os -mcpu=cortex-m0 -mthumb"\`
`
}

const testing = (vectorCount: number) => `## On a laptop: one command

    make test

compiles everything with \`-std=c99 -Wall -Wextra -Wpedantic -Werror\`, runs every vector and compares
the event log byte for byte with the phone's (\`# ${vectorCount} of ${vectorCount} vectors agree\`). Without make: \`cmake -B
build && cmake --build build && ctest --test-dir build\`.

## On the board: ten minutes

1. Add \`core/*.c\`, \`model/model.c\`, \`effects/*.c\` and \`example/main.c\` to an empty project of your
   board; include paths \`core\`, \`model\`, \`effects\`, \`example\`. No library is needed.
2. Write the functions of \`example/board.h\`: read a sample, show the light.
3. Set the sensor to the rate and ranges above; a wrong one is refused at the start.
4. Move it. If it does not answer, run the self-test over a serial line and paste what it prints into
   the app: \`INTEGRATION.md\`, which also has FIFO, sleep, other mountings and the watchdog.
`

function limits({ trained }: ModelOrigin): string {
  const { segmenter, board } = trained.model
  const ms = (samples: number) => Math.round((samples * 1e6) / board.rateMillihertz)
  return `## Limits

- A movement takes ${ms(segmenter.minLength)} to ${ms(segmenter.maxLength)} ms; the answer comes ${ms(segmenter.offHold)} ms after it ended.
- The samples must come at an even rate, none left out.
- The model knows the hands it was trained with. How well it does with others is what the
  evaluation on the phone says; this bundle proves only that the board computes the same.
`
}

function lightSafety(origin: LightOrigin): string {
  return `## Safety of the light

${plainLines(lightNote(origin))}

The preview takes each emitter for a primary of the phone's screen: your LED is brighter and its
colours purer. PWM is to run at the frequency and bits of \`effects/effect_table.h\`.
`
}

/** Several lines for Markdown; those that start with '-' stay a list. */
function plainLines(text: string): string {
  return text.split('\n').map(plain).join('\n')
}

const SAFETY = `## Safety

- Never flash light at people: flashes of 3 to 60 a second can cause seizures. Keep to three flashes
  in any second at most whatever you change, and avoid saturated red.
- Do not let anybody look into a bright LED closely; diffuse it.
- Cells: use protected ones, a fuse or current limit, and a case that cannot be crushed in a hand.
  Never charge in the hand or unattended. Keep button cells from children.
- A prop that is swung can leave the hand: give it a strap and soft edges.
`
