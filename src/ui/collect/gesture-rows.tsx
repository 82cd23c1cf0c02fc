import { useState } from 'preact/hooks'
import type { Plan, PlanGesture } from '../../shared/collect/plan'
import type { Gesture, Take } from '../../shared/model/library'
import { COLLECT_PLANS } from '../../shared/words/en/collect-plans'
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
      {plan.gestures.length === 0 && <p role="status">{COLLECT_PLANS.gesture.atLeastOne}</p>}
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
          text: COLLECT_PLANS.gesture.takes(n),
        }))}
        onChange={count}
      />
      {planned !== undefined && (
        <>
          <Field label={COLLECT_PLANS.gesture.words}>
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
            ? COLLECT_PLANS.gesture.noDemonstration
            : COLLECT_PLANS.gesture.shown(seconds)}
          {none && ` ${COLLECT_PLANS.gesture.tooShort}`}
        </p>
        {takes.length > 0 && (
          <Button tone="quiet" onClick={() => setChoosing(true)}>
            <Icon name="play" />{' '}
            {shown === null ? COLLECT_PLANS.gesture.showTake : COLLECT_PLANS.gesture.change}
          </Button>
        )}
      </div>
    )
  }
  return (
    <SelectField
      label={COLLECT_PLANS.gesture.demonstration}
      value="choose"
      options={[
        { value: 'choose', text: COLLECT_PLANS.gesture.chooseTake },
        { value: '', text: COLLECT_PLANS.gesture.none },
        ...takes.map((take) => ({ value: take.id, text: takeText(take) })),
      ]}
      onChange={(value) => value !== 'choose' && void choose(value)}
    />
  )
}

function takeText({ recordedAt, testerCode, durationMs }: Take): string {
  const when = recordedAt.slice(0, 16).replace('T', ' ')
  return COLLECT_PLANS.gesture.take(when, testerCode, durationMs)
}
