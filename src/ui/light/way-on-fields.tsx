import type { Gesture } from '../../shared/model/library'
import { LIGHT_RULES } from '../../shared/model/light'
import { LIGHT_EFFECT } from '../../shared/words/en/light-effect'
import { Choice, SelectField } from '../common'
import { NumberField } from '../prop/number-field'
import type { EffectFieldsProps } from './effect-fields'

const AT_REST = 'rest'

/** How the effect comes in, how often it plays, what follows, and what another one does to it. */
export function WayOnFields(
  props: EffectFieldsProps & { gestures: readonly Gesture[]; isRest: boolean },
) {
  const { effect, gestures, isRest, onChange } = props
  const followers = [
    { value: AT_REST, text: LIGHT_EFFECT.wayOn.lightAtRest },
    { value: 'reject', text: LIGHT_EFFECT.wayOn.lightOfReject },
    ...gestures.map(({ id, name }) => ({ value: id, text: name })),
  ]
  return (
    <>
      <div class="prop-pair">
        <NumberField
          label={LIGHT_EFFECT.wayOn.fadesIn}
          unit="ms"
          value={effect.fadeMs}
          min={0}
          max={65_535}
          whole
          onChange={(fadeMs) => onChange({ ...effect, fadeMs })}
        />
        <NumberField
          label={LIGHT_EFFECT.wayOn.rounds}
          value={effect.rounds}
          min={0}
          max={65_535}
          whole
          hint={LIGHT_EFFECT.wayOn.roundsHint}
          onChange={(rounds) => onChange({ ...effect, rounds })}
        />
      </div>
      {effect.rounds > 0 && (
        <SelectField
          label={LIGHT_EFFECT.wayOn.followedBy}
          value={followers.some(({ value }) => value === effect.next) ? effect.next! : AT_REST}
          options={followers}
          onChange={(next) => onChange({ ...effect, next: next === AT_REST ? null : next })}
        />
      )}
      {!isRest && (
        <Choice
          legend={LIGHT_EFFECT.wayOn.ruleLegend}
          value={effect.rule}
          options={LIGHT_RULES.map((value) => ({ value, text: LIGHT_EFFECT.wayOn.rules[value] }))}
          onChange={(rule) => onChange({ ...effect, rule })}
        />
      )}
    </>
  )
}
