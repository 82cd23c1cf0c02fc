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
        legend="Give the mounting by"
        value={way}
        options={[
          { value: 'axes', text: 'Axes' },
          { value: 'matrix', text: 'Matrix' },
        ]}
        onChange={setWay}
      />
      {way === 'axes' ? (
        <AxisChoice axes={axes ?? ['+x', '+y', '+z']} onChange={mount} />
      ) : (
        <MatrixField matrix={target.mounting} onChange={mount} />
      )}
      <Choice
        legend="Board axis along the prop"
        value={target.longAxis}
        options={LONG_AXES}
        onChange={(longAxis) => onChange({ ...target, longAxis })}
      />
      <p class="small quiet">
        The long axis is the bold one: it should lie as the prop does, whose roll in the hand is
        taken out about it.
      </p>
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
        legend="Board x points along prop"
        value={x}
        options={options(SIGNED_AXES)}
        onChange={(axis) => onChange([...mountingFrom(axis, y).matrix])}
      />
      <Choice
        legend="Board y points along prop"
        value={y}
        options={options(choicesForY(x))}
        onChange={(axis) => onChange([...mountingFrom(x, axis).matrix])}
      />
      <p class="small quiet">Board z then points along prop {signed(z)}.</p>
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
      setProblem('Enter nine numbers, three a row.')
      return
    }
    const checked = validateMounting(parsed)
    setProblem(checked.ok ? null : checked.message)
    if (checked.ok) onChange(checked.value)
  }
  return (
    <Field
      label="Board = matrix · prop, row by row"
      wrong={problem !== null}
      hint={problem ?? 'Rows are board x, y, z in the axes of the prop; a rotation.'}
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
