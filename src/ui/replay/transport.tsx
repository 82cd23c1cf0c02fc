import { CORE_PHASES } from '../../shared/core/core'
import type { Replay } from '../../shared/model/replay'
import { REPLAY_VIEW } from '../../shared/words/en/replay-view'
import { Button, Icon } from '../common'
import { PACES, type Pace, type PlayHead } from './play-head'

const PACE_WORDS: Record<Pace, string> = { 1: '1', 0.5: '½', 0.25: '¼', 0.125: '⅛' }

/** Play, scrub, slow down, loop: in reach of the thumb. */
export function Transport({ head, replay }: { head: PlayHead; replay: Replay }) {
  const playing = head.playing.value
  return (
    <div class="transport">
      <Where head={head} replay={replay} />
      <Button
        label={playing ? REPLAY_VIEW.transport.pause : REPLAY_VIEW.transport.play}
        tone={playing ? 'plain' : 'amber'}
        onClick={() => head.toggle()}
      >
        <Icon name={playing ? 'pause' : 'play'} />
      </Button>
      <fieldset class="choice transport-pace">
        <legend class="unseen">{REPLAY_VIEW.transport.speed}</legend>
        <div class="choice-options">
          {PACES.map((pace) => (
            <label key={pace} class="choice-option">
              <input
                type="radio"
                name="pace"
                checked={pace === head.pace.value}
                aria-label={REPLAY_VIEW.transport.speedOf(PACE_WORDS[pace] ?? '')}
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
        label={REPLAY_VIEW.transport.loop}
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
  const { transport } = REPLAY_VIEW
  const sample = head.sample
  const { from, to } = head.span.value
  const phase = CORE_PHASES[replay.phase[sample] ?? 0] ?? 'idle'
  const seconds = transport.seconds(sample / replay.rateHz)
  return (
    <label class="scrub">
      <span>
        <b>{seconds}</b>{' '}
        <span class="quiet small">
          {transport.sample(sample, transport.phases[phase], sample >= replay.recordedCount)}
        </span>
      </span>
      <input
        type="range"
        min={from}
        max={Math.max(to - 1, from)}
        value={sample}
        aria-valuetext={`${seconds}, ${transport.phases[phase]}`}
        onInput={(event) => {
          head.playing.value = false
          head.moveTo(event.currentTarget.valueAsNumber)
        }}
      />
    </label>
  )
}
