import '../proof/proof.css'
import './teach.css'
import { useEffect, useState } from 'preact/hooks'
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
const NEW_NAME = 'The new gesture'

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
      <Screen title="Teach" back="#/try">
        <NextStep
          text="A prop is taught beside gestures that it knows, and there are no takes yet."
          action="Record takes on Moves"
          href="#/moves"
        />
      </Screen>
    )
  }
  return teach === null ? (
    <Screen title="Teach" back="#/try">
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
    <Screen title="Teach" back="#/try" aside={mark} foot={foot}>
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
    { value: '', text: 'One gesture more' },
    ...gestures.map(({ id, name }) => ({ value: id, text: `In place of ${name}` })),
  ]
  const choose = (id: string) => {
    const gesture = gestures.find((one) => one.id === id)
    setWish({ gestureId: gesture?.id ?? null, name: gesture?.name ?? NEW_NAME })
  }
  return (
    <>
      <p>
        The exported core can learn on the prop: three movements, no phone, no training. Here the
        same code learns on this phone, so that you see beforehand whether it works and what it
        costs the other gestures. Nothing is stored.
      </p>
      <SelectField label="Teach" value={wish.gestureId ?? ''} options={options} onChange={choose} />
      {wish.gestureId === null ? (
        <p class="quiet">Think of a movement that none of the gestures resembles.</p>
      ) : (
        <p class="quiet">
          The templates of {wish.name} are put aside: afterwards only your way of making it counts.
        </p>
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
        {starting ? 'Starting …' : simulated ? 'Start with the simulated phone' : 'Start'}
      </Button>
      <Button tone="quiet" wide disabled={starting} onClick={() => void begin(other)}>
        {simulated ? 'Use this phone’s sensors' : 'Use the simulated phone'}
      </Button>
    </div>
  )
}
