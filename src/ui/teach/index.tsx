import '../proof/proof.css'
import './teach.css'
import { useEffect, useState } from 'preact/hooks'
import { TEACH_SCREENS } from '../../shared/words/en/teach-screens'
import type { TeachState, Wish } from '../../state/teach'
import {
  Button,
  Mark,
  NextStep,
  Notice,
  Progress,
  Screen,
  SelectField,
  useApp,
  useWakeLock,
} from '../common'
import { Session, SessionFoot } from './session'

/** Name of a gesture that the library does not have. */
const NEW_NAME = TEACH_SCREENS.newGesture

/** Teaching on the prop, tried on the phone: what the board would learn, and what it costs. */
export function TeachScreen() {
  const app = useApp()
  const [teach, setTeach] = useState<TeachState | null>(null)
  useEffect(() => {
    void app.openTeach().then(setTeach)
  }, [app])
  useEffect(() => () => void teach?.stop(), [teach])
  const takes = app.library.recordings.value.filter(({ kind }) => kind === 'take').length
  if (takes === 0) {
    return (
      <Screen title={TEACH_SCREENS.title} back="#/try">
        <NextStep text={TEACH_SCREENS.noTakes} action={TEACH_SCREENS.record} href="#/moves" />
      </Screen>
    )
  }
  return teach === null ? (
    <Screen title={TEACH_SCREENS.title} back="#/try">
      {null}
    </Screen>
  ) : (
    <Teach teach={teach} />
  )
}

function Teach({ teach }: { teach: TeachState }) {
  const { motion, model } = useApp()
  const running = teach.running.value
  useWakeLock(running)
  const mark = motion.kind.value === 'simulated' && <Mark kind="simulated" />
  const [wish, setWish] = useState<Wish>({ gestureId: null, name: NEW_NAME })
  const training = model.value
  const shown = running || teach.steps.value.length > 0
  const foot =
    !running && training.state === 'running' ? (
      <Progress progress={training.progress} cancel={training.cancel} />
    ) : shown ? (
      <SessionFoot teach={teach} leave={() => void teach.leave()} />
    ) : (
      <StartFoot start={() => teach.start(wish)} />
    )
  return (
    <Screen title={TEACH_SCREENS.title} back="#/try" aside={mark} foot={foot}>
      {teach.trouble.value !== null && (
        <Notice tone="trouble" live>
          <p>{teach.trouble.value}</p>
        </Notice>
      )}
      {shown ? <Session teach={teach} /> : <Wishes wish={wish} setWish={setWish} />}
    </Screen>
  )
}

function Wishes({ wish, setWish }: { wish: Wish; setWish: (wish: Wish) => void }) {
  const gestures = useApp().library.current.value?.gestures ?? []
  const options = [
    { value: '', text: TEACH_SCREENS.wish.oneMore },
    ...gestures.map(({ id, name }) => ({ value: id, text: TEACH_SCREENS.wish.inPlaceOf(name) })),
  ]
  const choose = (id: string) => {
    const gesture = gestures.find((one) => one.id === id)
    setWish({ gestureId: gesture?.id ?? null, name: gesture?.name ?? NEW_NAME })
  }
  return (
    <>
      <p>{TEACH_SCREENS.wish.about}</p>
      <SelectField
        label={TEACH_SCREENS.title}
        value={wish.gestureId ?? ''}
        options={options}
        onChange={choose}
      />
      {wish.gestureId === null ? (
        <p class="quiet">{TEACH_SCREENS.wish.think}</p>
      ) : (
        <p class="quiet">{TEACH_SCREENS.wish.putAside(wish.name)}</p>
      )}
    </>
  )
}

function StartFoot({ start }: { start: () => Promise<unknown> }) {
  const { motion } = useApp()
  const [starting, setStarting] = useState(false)
  const simulated = motion.kind.value === 'simulated'
  const begin = async (kind: 'phone' | 'simulated') => {
    setStarting(true)
    motion.use(kind)
    await start()
    setStarting(false)
  }
  const [own, other] = simulated
    ? (['simulated', 'phone'] as const)
    : (['phone', 'simulated'] as const)
  return (
    <div class="foot-stack">
      <Button tone="amber" big wide disabled={starting} onClick={() => void begin(own)}>
        {starting
          ? TEACH_SCREENS.wish.starting
          : simulated
            ? TEACH_SCREENS.wish.startSimulated
            : TEACH_SCREENS.wish.start}
      </Button>
      <Button tone="quiet" wide disabled={starting} onClick={() => void begin(other)}>
        {simulated ? TEACH_SCREENS.wish.usePhone : TEACH_SCREENS.wish.useSimulated}
      </Button>
    </div>
  )
}
