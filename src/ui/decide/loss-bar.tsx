import type { SettingResult } from '../../shared/decide/sensor-decision'
import { DECIDE_SCREENS } from '../../shared/words/en/decide-screens'
import { lossText } from '../../shared/words/en/sensor-words'

/** Ends of the axis, shares of takes: a loss beyond is drawn open. */
const FROM = -0.05
const TO = 0.15

/** A loss with its interval, against nought and the accepted loss. */
export function LossBar({ result, tolerance }: { result: SettingResult; tolerance: number }) {
  const { value, low, high } = result.loss
  const open = high > TO ? ' interval-open' : ''
  return (
    <div
      class={`interval${open}`}
      role="img"
      aria-label={DECIDE_SCREENS.sensor.loss(lossText(result))}
      style={{
        '--low': at(low),
        '--high': at(high),
        '--value': at(value),
        '--nought': at(0),
        '--limit': at(tolerance),
      }}
    >
      <i class="decide-nought" />
      <i class="decide-limit" />
      <i class="interval-range" />
      {value <= TO && value >= FROM && <i class="interval-dot" />}
    </div>
  )
}

/** Words along the axis of the bars below it. */
export function LossAxis() {
  return (
    <div class="decide-loss-ends" aria-hidden="true">
      <span>{DECIDE_SCREENS.sensor.gains}</span>
      <span style={{ left: at(0) }}>0</span>
      <span>{DECIDE_SCREENS.sensor.loses}</span>
    </div>
  )
}

function at(share: number): string {
  return `${(Math.min(1, Math.max(0, (share - FROM) / (TO - FROM))) * 100).toFixed(2)}%`
}
