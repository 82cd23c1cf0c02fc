import { useEffect, useMemo, useState } from 'preact/hooks'
import { estimateDurationMs } from '../../shared/collect/duration'
import type { Plan, PlanGesture } from '../../shared/collect/plan'
import { decodePlanLink } from '../../shared/collect/plan-link'
import { progressOf } from '../../shared/collect/session-progress'
import type { Hand } from '../../shared/model/library'
import { plural } from '../../shared/present/numbers'
import { aboutMinutes } from '../../shared/present/session-words'
import type { SessionsState } from '../../state/session'
import { Button, HOME, Notice, navigate, route, Screen, useApp } from '../common'
import { wakeSound } from '../record/cues'
import { BigButton } from './big-button'
import { Consent } from './consent'
import { Demonstration } from './demonstration'
import { HandChoice } from './hand-choice'

/** '#/join/<fragment>': what a scanned code opens. */
export function JoinScreen({ fragment, sessions }: { fragment: string; sessions: SessionsState }) {
  const read = useMemo(() => decodePlanLink(fragment), [fragment])
  if (read.ok) return <Join plan={read.value} sessions={sessions} />
  return (
    <Screen title="This link does not open" back={HOME}>
      <Notice tone="trouble" live>
        <p>{read.message}</p>
      </Notice>
      <p class="quiet">Nothing was stored or changed on this phone.</p>
    </Screen>
  )
}

type Step = 'plan' | 'consent' | 'hand'

function Join({ plan, sessions }: { plan: Plan; sessions: SessionsState }) {
  const { motion } = useApp()
  const [step, setStep] = useState<Step>('plan')
  const [wrong, setWrong] = useState<string | null>(null)
  useEffect(() => {
    void sessions.read()
  }, [sessions])
  const begin = async (hand: Hand) => {
    const begun = await sessions.begin(plan, hand)
    if (begun.ok) navigate(route('session', begun.value.id))
    else setWrong(begun.message)
  }
  const agree = () => {
    // Within the tap: browsers give sound and motion readings only then.
    wakeSound()
    motion.use('phone')
    void motion.start()
    setStep('hand')
    if (plan.hand !== 'own') void begin(plan.hand === 'both' ? 'unknown' : plan.hand)
  }
  if (step === 'hand' && plan.hand === 'own') {
    return <HandChoice wrong={wrong} onChoose={(hand) => void begin(hand)} />
  }
  return (
    <Screen
      title={plan.title}
      foot={<JoinFoot plan={plan} sessions={sessions} onJoin={() => setStep('consent')} />}
    >
      <PlanWords plan={plan} />
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
      {step === 'consent' && (
        <Consent title={plan.title} onAgree={agree} onRefuse={() => setStep('plan')} />
      )}
    </Screen>
  )
}

function JoinFoot({
  plan,
  sessions,
  onJoin,
}: {
  plan: Plan
  sessions: SessionsState
  onJoin: () => void
}) {
  const open = sessions.runs.value.find((run) => run.plan.id === plan.id && run.endedAt === null)
  if (open === undefined) {
    return (
      <BigButton tone="amber" meaning="join" onTap={onJoin}>
        Take part
      </BigButton>
    )
  }
  const { done, total } = progressOf(open)
  return (
    <div class="session-foot-stack">
      <p>
        The session of {open.testerCode} stands at {done} of {total}.
      </p>
      <BigButton tone="amber" meaning="go-on" onTap={() => navigate(route('session', open.id))}>
        Go on
      </BigButton>
      <Button big wide onClick={onJoin}>
        Begin as somebody else
      </Button>
    </div>
  )
}

/** What is asked and how long it takes, with the movements to look at. */
function PlanWords({ plan }: { plan: Plan }) {
  const takes = plan.gestures.reduce((sum, gesture) => sum + gesture.takes, 0)
  const all = plan.hand === 'both' ? 2 * takes : takes
  const { number, of } = plan.part
  return (
    <>
      <p class="join-lead">
        You hold this phone as if it were the prop and move it: {plural('movement', all)},{' '}
        {aboutMinutes(estimateDurationMs(plan, new Map()))}
        {of > 1 && `, part ${number} of ${of}`}. You are told what to do, one movement at a time.
      </p>
      <Movements gestures={plan.gestures} />
    </>
  )
}

function Movements({ gestures }: { gestures: PlanGesture[] }) {
  const [chosen, setChosen] = useState(gestures[0]?.gestureId)
  const gesture = gestures.find(({ gestureId }) => gestureId === chosen)
  return (
    <div class="movements">
      <div class="buttons">
        {gestures.map(({ gestureId, name, takes }) => (
          <Button
            key={gestureId}
            pressed={gestureId === chosen}
            onClick={() => setChosen(gestureId)}
          >
            {name} × {takes}
          </Button>
        ))}
      </div>
      {gesture?.demonstration && (
        <Demonstration key={gesture.gestureId} name={gesture.name} shown={gesture.demonstration} />
      )}
      {gesture !== undefined && gesture.words !== '' && <p>{gesture.words}</p>}
    </div>
  )
}
