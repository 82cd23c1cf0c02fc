import { channelCount } from '../model/recogniser-model'
import { identifierTails } from './c-text'
import { answeringLibrary, type LightOrigin, lightNote } from './light-note'
import { countLightMemory, countMemory } from './memory'
import type { ModelOrigin } from './model-source'
import type { Vector } from './vector'

/** The bundle's README.md: what it is, what it costs, how to test and build it in. */
export function bundleReadme(origin: LightOrigin, vectors: readonly Vector[]): string {
  return [
    introduction(origin),
    gestureTable(origin),
    costs(origin),
    TESTING,
    vectorTable(vectors),
    INTEGRATION,
    limits(origin),
    lightSafety(origin),
    SAFETY,
  ].join('\n')
}

/** Text for a line of Markdown, and for a cell of its tables. */
function plain(text: string): string {
  return text.replace(/[\p{Cc}\p{Zl}\p{Zp}]+/gu, ' ').replace(/[\\`*_{}[\]<>#|]/g, '\\$&')
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
| \`example/\` | a whole main loop; \`board.h\` is what it asks of your hardware |
| \`selftest/\` | a program that runs the vectors and compares |
| \`vectors/\` | samples and the event log that must come of them |
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
  const { normaliser, band } = trained.model
  const perTemplate = normaliser.length * (2 * band + 1) * channelCount(normaliser)
  return `## What it costs

| | bytes | |
|---|---|---|
| flash: templates | ${memory.templateBytes} | counted |
| flash: gestures | ${memory.gestureBytes} | counted |
| flash: effects | ${light.tableBytes} | counted |
| flash: lightness table | ${light.lightnessBytes} | counted, part of \`core/\` |
| flash: code of \`core/\` | | measure it for your compiler: \`make size\` |
| RAM: last samples | ${memory.ringBytes} | counted |
| RAM: scratch | ${memory.queryBytes + memory.rowBytes} | counted |
| RAM: \`answer\` (light, tune, vibration) | ${light.stateBytes} | on a 32-bit part |
| RAM: \`mvw_state\`, \`mvw_model\` | about 200 | on a 32-bit part |

The sample that ends a movement also pays for the comparison: at most ${perTemplate} multiplications
for each of ${memory.templateBytes / (normaliser.length * channelCount(normaliser))} templates. All other samples cost a few hundred operations.

\`make size CC=arm-none-eabi-gcc SIZE=arm-none-eabi-size CFLAGS="-Os -mcpu=cortex-m0 -mthumb"\`
`
}

const TESTING = `## Test it first

\`make test\` (or \`cmake -B build && cmake --build build && ctest --test-dir build\`) compiles
everything with \`-std=c99 -Wall -Wextra -Wpedantic -Werror\`, runs every vector and compares the event
log byte for byte with the phone's. \`build/run-vectors vectors/01-*.in\` runs one.
`

function vectorTable(vectors: readonly Vector[]): string {
  const rows = vectors.map(({ why }, index) => `| ${vectorNumber(index)} | ${plain(why)} |`)
  return `## Vectors

\`vectors/NN-name.in\` is read line by line: six integers are a sample (accelerometer x y z, gyroscope
x y z, in counts, board axes); \`button 1\`, \`button 0\` and \`reset\` call \`mvw_button()\` and
\`mvw_reset()\`; \`board <mHz> <ng> <ndeg/s>\` and \`version <n>\`, before the first sample, change what
\`mvw_init()\` is given; \`#\` starts a comment. \`NN-name.log\` beside it is the event log:

    init <status>
    event <start> <end> <gesture|reject> <nearest> <reason> <roll> <distance> <threshold> <runner-up> <runner-up distance>
    end <samples>

Samples count from 0 at the last reset and \`<end>\` is one past the last of the movement; gestures are
numbers as above; \`-\` is none.

| | shows |
|---|---|
${rows.join('\n')}
`
}

/** Number of a vector in file names: 01, 02, ... */
export function vectorNumber(index: number): string {
  return String(index + 1).padStart(2, '0')
}

const INTEGRATION = `## Build it in

1. Add \`core/*.c\`, \`model/model.c\` and, if you like, \`effects/*.c\` to your project; include paths
   \`core\`, \`model\`, \`effects\`. Any C99 compiler will do.
2. Set the sensor up for the rate and ranges above. Mount it as the target says, or turn the samples
   before you push them.
3. Copy \`example/main.c\` and write the functions of \`example/board.h\`: read a sample when the sensor
   says that one is ready, and set the light.
4. Give \`mvw_init()\` the setting the sensor really has. It refuses a rate more than 5 % off and a
   sensitivity more than 1 % off, so a wrong range register is found at once.
5. On the bench compare \`model_gesture_name()\` and \`MODEL_SHA256\` with the phone.

On 8-bit AVR the tables stay in flash by \`PROGMEM\`; one table there can hold 32,767 bytes at most.
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
