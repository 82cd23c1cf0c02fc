import './library.css'
import type { Gesture, Hand } from '../../shared/model/library'
import type { LogLabels } from '../../state/app'
import { Choice, SelectField, TextField } from '../common'

const BACKGROUND = ''
const HANDS: { value: Hand; text: string }[] = [
  { value: 'left', text: 'Left' },
  { value: 'right', text: 'Right' },
  { value: 'unknown', text: 'Not noted' },
]

export interface LabelFieldsProps {
  gestures: Gesture[]
  labels: LogLabels
  onChange: (labels: LogLabels) => void
}

/** What the logs are: which gesture, by whom, with which hand. */
export function LabelFields({ gestures, labels, onChange }: LabelFieldsProps) {
  return (
    <>
      <SelectField
        label="These logs are"
        value={labels.gestureId ?? BACKGROUND}
        options={[
          ...gestures.map(({ id, name }) => ({ value: id, text: `takes of ${name}` })),
          { value: BACKGROUND, text: 'background: no gesture in them' },
        ]}
        onChange={(id) => onChange({ ...labels, gestureId: id === BACKGROUND ? null : id })}
      />
      <TextField
        label="Tester's code"
        value={labels.testerCode}
        maxLength={8}
        onInput={(code) => onChange({ ...labels, testerCode: code.trim() })}
      />
      <Choice
        legend="Hand that held the prop"
        value={labels.hand}
        options={HANDS}
        onChange={(hand) => onChange({ ...labels, hand })}
      />
    </>
  )
}
