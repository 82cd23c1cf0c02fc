import { useState } from 'preact/hooks'
import { GALLERY } from '../../shared/words/en/gallery'
import { UNIT_SPACE } from '../../shared/words/en/numbers'
import { Choice, SelectField, Slider, TextField } from '../common'
import { Part } from './part'

type Hand = 'left' | 'right' | 'both'

const HANDS: { value: Hand; text: string }[] = [
  { value: 'left', text: GALLERY.left },
  { value: 'right', text: GALLERY.right },
  { value: 'both', text: GALLERY.both },
]

export function Forms() {
  const [name, setName] = useState('')
  const [rate, setRate] = useState('5000')
  const [hand, setHand] = useState<Hand>('right')
  const [brightness, setBrightness] = useState(60)
  return (
    <>
      <Part name={GALLERY.textField} says={GALLERY.textFieldSays}>
        <TextField
          label={GALLERY.empty}
          value={name}
          onInput={setName}
          placeholder={GALLERY.suchAsRing}
        />
        <TextField
          label={GALLERY.wrong}
          value={rate}
          onInput={setRate}
          wrong
          inputMode="decimal"
          hint={GALLERY.wrongExample}
        />
      </Part>
      <Part name={GALLERY.selectField} says={GALLERY.selectSays}>
        <SelectField label={GALLERY.hand} value={hand} options={HANDS} onChange={setHand} />
      </Part>
      <Part name={GALLERY.choice} says={GALLERY.choiceSays}>
        <Choice legend={GALLERY.hand} value={hand} options={HANDS} onChange={setHand} />
      </Part>
      <Part name={GALLERY.slider} says={GALLERY.sliderSays}>
        <Slider
          label={GALLERY.brightness}
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
