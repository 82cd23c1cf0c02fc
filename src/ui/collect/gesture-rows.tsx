import { useState } from 'preact/hooks'
import type { Plan, PlanGesture } from '../../shared/collect/plan'
import type { Gesture, Take } from '../../shared/model/library'
import type { CollectState } from '../../state/collect'
import { Button, Field, Icon, SelectField, useApp } from '../common'

interface Props {
  collect: CollectState
  plan: Plan
  onChange: (gestures: PlanGesture[]) => void
}

const COUNTS = [1, 2, 3, 4, 5, 6, 8, 10, 12, 15, 20, 30, 50]
/** The newest takes are offered as demonstrations; older ones are found under their gesture. */
const OFFERED_TAKES = 12

/** Each gesture of the library: how many takes are asked, in which words, and what is shown. */
export function GestureRows({ collect, plan, onChange }: Props) {
  const gestures = useApp().library.current.value?.gestures ?? []
  const set = (id: string, change: PlanGesture | null) => {
    const planned = new Map(plan.gestures.map((one) => [one.gestureId, one]))
    if (change === null) planned.delete(id)
    else planned.set(id, change)
    // In the library's order, whatever the order they were chosen in.
    onChange(gestures.flatMap((one) => planned.get(one.id) ?? []))
  }
  return (
    <>
      {gestures.map((gesture) => (
        <GestureRow
          key={gesture.id}
          collect={collect}
          gesture={gesture}
          planned={plan.gestures.find(({ gestureId }) => gestureId === gesture.id)}
          onChange={(change) => set(gesture.id, change)}
        />
      ))}
      {plan.gestures.length === 0 && <p role="status">A plan needs at least one gesture.</p>}
    </>
  )
}

interface RowProps {
  collect: CollectState
  gesture: Gesture
  planned: PlanGesture | undefined
  onChange: (change: PlanGesture | null) => void
}

function GestureRow({ collect, gesture, planned, onChange }: RowProps) {
  const takes = planned?.takes ?? 0
  const count = (value: string) => {
    if (value === '0') return onChange(null)
    const fresh = { gestureId: gesture.id, words: gesture.note.slice(0, 200), demonstration: null }
    onChange({ ...(planned ?? fresh), name: gesture.name, takes: Number(value) })
  }
  const counts = [...new Set([0, ...COUNTS, takes])].sort((a, b) => a - b)
  return (
    <div class="plan-gesture">
      <SelectField
        label={gesture.name}
        value={String(takes)}
        options={counts.map((n) => ({
          value: String(n),
          text: n === 0 ? 'not asked' : `${n} takes`,
        }))}
        onChange={count}
      />
      {planned !== undefined && (
        <>
          <Field label="What the hand does">
            {({ id }) => (
              <textarea
                id={id}
                rows={2}
                value={planned.words}
                maxLength={200}
                onInput={(event) => onChange({ ...planned, words: event.currentTarget.value })}
              />
            )}
          </Field>
          <Shown collect={collect} planned={planned} onChange={onChange} />
        </>
      )}
    </div>
  )
}

/** Which take is shown to testers as a moving prop. */
function Shown({
  collect,
  planned,
  onChange,
}: Omit<RowProps, 'gesture' | 'planned'> & { planned: PlanGesture }) {
  const [choosing, setChoosing] = useState(false)
  const [none, setNone] = useState(false)
  const takes = useApp()
    .library.recordings.value.filter(
      (one): one is Take => one.kind === 'take' && one.gestureId === planned.gestureId,
    )
    .slice(0, OFFERED_TAKES)
  const choose = async (takeId: string) => {
    const demonstration = takeId === '' ? null : await collect.demonstration(takeId)
    setNone(takeId !== '' && demonstration === null)
    onChange({ ...planned, demonstration })
    setChoosing(false)
  }
  const shown = planned.demonstration
  if (!choosing) {
    const seconds = shown === null ? 0 : ((shown.values.length / 6) * shown.periodMs) / 1000
    return (
      <div class="plan-shown">
        <p class="quiet small">
          {shown === null
            ? 'No demonstration: testers read the words.'
            : `Testers see one of your takes, ${seconds.toFixed(1)}\u202fs.`}
          {none && ' That take is too short to show.'}
        </p>
        {takes.length > 0 && (
          <Button tone="quiet" onClick={() => setChoosing(true)}>
            <Icon name="play" /> {shown === null ? 'Show a take' : 'Change'}
          </Button>
        )}
      </div>
    )
  }
  return (
    <SelectField
      label="Demonstration"
      value="choose"
      options={[
        { value: 'choose', text: 'Choose a take' },
        { value: '', text: 'None' },
        ...takes.map((take) => ({ value: take.id, text: takeText(take) })),
      ]}
      onChange={(value) => value !== 'choose' && void choose(value)}
    />
  )
}

function takeText({ recordedAt, testerCode, durationMs }: Take): string {
  const when = recordedAt.slice(0, 16).replace('T', ' ')
  return `${when} by ${testerCode}, ${(durationMs / 1000).toFixed(1)}\u202fs`
}
