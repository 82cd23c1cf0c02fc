import { CORE_PHASES, type CorePhase } from '../../shared/core/core'
import type { Replay } from '../../shared/model/replay'
import { UNIT_SPACE } from '../../shared/words/en/numbers'
import { Button, Icon } from '../common'
import { PACES, type Pace, type PlayHead } from './play-head'

const PHASE_WORDS: Record<CorePhase, string> = {
  idle: 'at rest',
  moving: 'inside a movement',
  'wait-rest': 'waiting for rest',
}

const PACE_WORDS: Record<Pace, string> = { 1: '1', 0.5: '½', 0.25: '¼', 0.125: '⅛' }

/** Play, scrub, slow down, loop: in reach of the thumb. */
export function Transport({ head, replay }: { head: PlayHead; replay: Replay }) {
  const playing = head.playing.value
  return (
    <div class="transport">
      <Where head={head} replay={replay} />
      <Button
        label={playing ? 'Pause' : 'Play'}
        tone={playing ? 'plain' : 'amber'}
        onClick={() => head.toggle()}
      >
        <Icon name={playing ? 'pause' : 'play'} />
      </Button>
      <fieldset class="choice transport-pace">
        <legend class="unseen">Speed</legend>
        <div class="choice-options">
          {PACES.map((pace) => (
            <label key={pace} class="choice-option">
              <input
                type="radio"
                name="pace"
                checked={pace === head.pace.value}
                aria-label={`Speed ${PACE_WORDS[pace]}`}
                onChange={() => {
                  head.pace.value = pace
                }}
              />
              <span aria-hidden="true">×{PACE_WORDS[pace]}</span>
            </label>
          ))}
        </div>
      </fieldset>
      <Button
        label="Loop"
        pressed={head.loop.value}
        onClick={() => {
          head.loop.value = !head.loop.peek()
        }}
      >
        <Icon name="loop" />
      </Button>
    </div>
  )
}

/** Time, sample and state of the segmenter at the play head, above its slider. */
function Where({ head, replay }: { head: PlayHead; replay: Replay }) {
  const sample = head.sample
  const { from, to } = head.span.value
  const phase = CORE_PHASES[replay.phase[sample] ?? 0] ?? 'idle'
  const seconds = `${(sample / replay.rateHz).toFixed(2)}${UNIT_SPACE}s`
  const added = sample >= replay.recordedCount ? '; stillness added after the recording' : ''
  return (
    <label class="scrub">
      <span>
        <b>{seconds}</b>{' '}
        <span class="quiet small">
          sample {sample}, {PHASE_WORDS[phase]}
          {added}
        </span>
      </span>
      <input
        type="range"
        min={from}
        max={Math.max(to - 1, from)}
        value={sample}
        aria-valuetext={`${seconds}, ${PHASE_WORDS[phase]}`}
        onInput={(event) => {
          head.playing.value = false
          head.moveTo(event.currentTarget.valueAsNumber)
        }}
      />
    </label>
  )
}
