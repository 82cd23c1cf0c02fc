import { useState } from 'preact/hooks'
import type { AxisName, Matrix3 } from '../../shared/model/target'
import {
  choicesForY,
  matrixText,
  mountingAxes,
  mountingFrom,
  parseMatrix,
  remount,
  SIGNED_AXES,
} from '../../shared/present/mounting-choice'
import { validateMounting } from '../../shared/target/validate-target'
import { TARGET_FORMS } from '../../shared/words/en/target-forms'
import { Choice, Field } from '../common'
import { MountingPicture } from './mounting-picture'
import type { TargetFormProps } from './sensor-form'

type Way = 'axes' | 'matrix'

const LONG_AXES: { value: AxisName; text: string }[] = [
  { value: 'x', text: 'x' },
  { value: 'y', text: 'y' },
  { value: 'z', text: 'z' },
]

/** How the board sits in the prop: by its axes, or by a matrix when it sits askew. */
export function MountingForm({ target, onChange }: TargetFormProps) {
  const axes = mountingAxes(target.mounting)
  const [way, setWay] = useState<Way>(axes === null ? 'matrix' : 'axes')
  const mount = (mounting: Matrix3) => onChange(remount(target, mounting))
  return (
    <>
      <MountingPicture mounting={target.mounting} longAxis={target.longAxis} />
      <Choice
        legend={TARGET_FORMS.mountingBy}
        value={way}
        options={[
          { value: 'axes', text: TARGET_FORMS.axes },
          { value: 'matrix', text: TARGET_FORMS.matrix },
        ]}
        onChange={setWay}
      />
      {way === 'axes' ? (
        <AxisChoice axes={axes ?? ['+x', '+y', '+z']} onChange={mount} />
      ) : (
        <MatrixField matrix={target.mounting} onChange={mount} />
      )}
      <Choice
        legend={TARGET_FORMS.boardAxisAlongProp}
        value={target.longAxis}
        options={LONG_AXES}
        onChange={(longAxis) => onChange({ ...target, longAxis })}
      />
      <p class="small quiet">{TARGET_FORMS.longAxisHint}</p>
    </>
  )
}

function signed(axis: string): string {
  return axis.replace('-', '−')
}

interface AxisChoiceProps {
  axes: [string, string, string]
  onChange: (mounting: Matrix3) => void
}

/** Board x, then board y among the four that are left: each of the 24 in two taps. */
function AxisChoice({ axes: [x, y, z], onChange }: AxisChoiceProps) {
  const options = (choices: readonly string[]) =>
    choices.map((axis) => ({ value: axis, text: signed(axis) }))
  return (
    <>
      <Choice
        legend={TARGET_FORMS.xAlong}
        value={x}
        options={options(SIGNED_AXES)}
        onChange={(axis) => onChange([...mountingFrom(axis, y).matrix])}
      />
      <Choice
        legend={TARGET_FORMS.yAlong}
        value={y}
        options={options(choicesForY(x))}
        onChange={(axis) => onChange([...mountingFrom(x, axis).matrix])}
      />
      <p class="small quiet">{TARGET_FORMS.zAlong(signed(z))}</p>
    </>
  )
}

function MatrixField({ matrix, onChange }: { matrix: Matrix3; onChange: (m: Matrix3) => void }) {
  const [draft, setDraft] = useState(matrixText(matrix))
  const [problem, setProblem] = useState<string | null>(null)
  const read = (text: string) => {
    setDraft(text)
    const parsed = parseMatrix(text)
    if (parsed === null) {
      setProblem(TARGET_FORMS.enterNine)
      return
    }
    const checked = validateMounting(parsed)
    setProblem(checked.ok ? null : checked.message)
    if (checked.ok) onChange(checked.value)
  }
  return (
    <Field
      label={TARGET_FORMS.matrixLabel}
      wrong={problem !== null}
      hint={problem ?? TARGET_FORMS.matrixHint}
    >
      {({ id, describedBy }) => (
        <textarea
          id={id}
          class="matrix-field"
          rows={3}
          spellcheck={false}
          aria-describedby={describedBy}
          aria-invalid={problem !== null}
          value={draft}
          onInput={(event) => read(event.currentTarget.value)}
        />
      )}
    </Field>
  )
}
