import { useState } from 'preact/hooks'
import { UNIT_SPACE } from '../../shared/words/en/numbers'
import { Choice, SelectField, Slider, TextField } from '../common'
import { Part } from './part'

type Hand = 'left' | 'right' | 'both'

const HANDS: { value: Hand; text: string }[] = [
  { value: 'left', text: 'Left' },
  { value: 'right', text: 'Right' },
  { value: 'both', text: 'Both' },
]

export function Forms() {
  const [name, setName] = useState('')
  const [rate, setRate] = useState('5000')
  const [hand, setHand] = useState<Hand>('right')
  const [brightness, setBrightness] = useState(60)
  return (
    <>
      <Part name="Text field" says="Label above, hint below; what is wrong is said in the hint.">
        <TextField label="Empty" value={name} onInput={setName} placeholder="such as Ring" />
        <TextField
          label="Wrong"
          value={rate}
          onInput={setRate}
          wrong
          inputMode="decimal"
          hint="5000 is more than the sensor gives: 1600 samples a second at most."
        />
      </Part>
      <Part name="Select field" says="For more options than fit side by side.">
        <SelectField label="Hand" value={hand} options={HANDS} onChange={setHand} />
      </Part>
      <Part name="Choice" says="A few exclusive options side by side.">
        <Choice legend="Hand" value={hand} options={HANDS} onChange={setHand} />
      </Part>
      <Part name="Slider" says="As high as a thumb, its value in words.">
        <Slider
          label="Brightness"
          value={brightness}
          min={0}
          max={100}
          text={`${brightness}${UNIT_SPACE}%`}
          onInput={setBrightness}
        />
      </Part>
    </>
  )
}
