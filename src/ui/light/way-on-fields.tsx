import type { Gesture } from '../../shared/model/library'
import { LIGHT_RULES, type LightRule } from '../../shared/model/light'
import { Choice, SelectField } from '../common'
import { NumberField } from '../prop/number-field'
import type { EffectFieldsProps } from './effect-fields'

const RULE_WORDS: Record<LightRule, string> = {
  'at-once': 'Makes way',
  'after-round': 'After its round',
  'to-end': 'Plays to its end',
}

const AT_REST = 'rest'

/** How the effect comes in, how often it plays, what follows, and what another one does to it. */
export function WayOnFields(
  props: EffectFieldsProps & { gestures: readonly Gesture[]; isRest: boolean },
) {
  const { effect, gestures, isRest, onChange } = props
  const followers = [
    { value: AT_REST, text: 'The light at rest' },
    { value: 'reject', text: 'That of a rejected movement' },
    ...gestures.map(({ id, name }) => ({ value: id, text: name })),
  ]
  return (
    <>
      <div class="prop-pair">
        <NumberField
          label="Fades in over"
          unit="ms"
          value={effect.fadeMs}
          min={0}
          max={65_535}
          whole
          onChange={(fadeMs) => onChange({ ...effect, fadeMs })}
        />
        <NumberField
          label="Rounds"
          value={effect.rounds}
          min={0}
          max={65_535}
          whole
          hint="0 goes on until another is asked for."
          onChange={(rounds) => onChange({ ...effect, rounds })}
        />
      </div>
      {effect.rounds > 0 && (
        <SelectField
          label="Followed by"
          value={followers.some(({ value }) => value === effect.next) ? effect.next! : AT_REST}
          options={followers}
          onChange={(next) => onChange({ ...effect, next: next === AT_REST ? null : next })}
        />
      )}
      {!isRest && (
        <Choice
          legend="When another gesture comes"
          value={effect.rule}
          options={LIGHT_RULES.map((value) => ({ value, text: RULE_WORDS[value] }))}
          onChange={(rule) => onChange({ ...effect, rule })}
        />
      )}
    </>
  )
}
