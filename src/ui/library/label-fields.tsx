import './library.css'
import type { Gesture, Hand } from '../../shared/model/library'
import { CSV_IMPORT } from '../../shared/words/en/csv-import'
import type { LogLabels } from '../../state/app'
import { Choice, SelectField, TextField } from '../common'

const BACKGROUND = ''
const HANDS: { value: Hand; text: string }[] = [
  { value: 'left', text: CSV_IMPORT.left },
  { value: 'right', text: CSV_IMPORT.right },
  { value: 'unknown', text: CSV_IMPORT.notNoted },
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
        label={CSV_IMPORT.theseLogsAre}
        value={labels.gestureId ?? BACKGROUND}
        options={[
          ...gestures.map(({ id, name }) => ({ value: id, text: CSV_IMPORT.takesOf(name) })),
          { value: BACKGROUND, text: CSV_IMPORT.background },
        ]}
        onChange={(id) => onChange({ ...labels, gestureId: id === BACKGROUND ? null : id })}
      />
      <TextField
        label={CSV_IMPORT.testerCode}
        value={labels.testerCode}
        maxLength={8}
        onInput={(code) => onChange({ ...labels, testerCode: code.trim() })}
      />
      <Choice
        legend={CSV_IMPORT.hand}
        value={labels.hand}
        options={HANDS}
        onChange={(hand) => onChange({ ...labels, hand })}
      />
    </>
  )
}
