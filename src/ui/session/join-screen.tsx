import { useEffect, useMemo, useState } from 'preact/hooks'
import { estimateDurationMs } from '../../shared/collect/duration'
import type { Plan, PlanGesture } from '../../shared/collect/plan'
import { decodePlanLink } from '../../shared/collect/plan-link'
import { runsOfPlan } from '../../shared/collect/runs-of-plan'
import { progressOf } from '../../shared/collect/session-progress'
import type { SessionRun } from '../../shared/collect/session-run'
import type { Hand } from '../../shared/model/library'
import { SESSION_JOIN } from '../../shared/words/en/session-join'
import { aboutMinutes } from '../../shared/words/en/session-words'
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
    <Screen
      title={SESSION_JOIN.noLink}
      back={HOME}
      foot={
        <Button big wide href={HOME}>
          {SESSION_JOIN.openLibrary}
        </Button>
      }
    >
      <Notice tone="trouble" live>
        <p>{read.message}</p>
      </Notice>
      <p class="quiet">{SESSION_JOIN.nothingStored}</p>
    </Screen>
  )
}

type Step = 'plan' | 'consent' | 'hand'

function Join({ plan, sessions }: { plan: Plan; sessions: SessionsState }) {
  const { motion } = useApp()
  const [step, setStep] = useState<Step>('plan')
  const [wrong, setWrong] = useState<string | null>(null)
  const [known, setKnown] = useState<SessionRun>()
  useEffect(() => {
    void sessions.read()
  }, [sessions])
  const begin = async (hand: Hand) => {
    const begun = await sessions.begin(plan, hand, known)
    if (begun.ok) navigate(route('session', begun.value.id))
    else setWrong(begun.message)
  }
  const agree = () => {
    // Within the tap: browsers give sound and motion readings only then.
    wakeSound()
    motion.use('phone')
    void motion.start()
    setStep('hand')
    if (known !== undefined) void begin(known.hand)
    else if (plan.hand !== 'own') void begin(plan.hand === 'both' ? 'unknown' : plan.hand)
  }
  const join = (as?: SessionRun) => {
    setKnown(as)
    setStep('consent')
  }
  if (step === 'hand' && plan.hand === 'own' && known === undefined) {
    return <HandChoice wrong={wrong} onChoose={(hand) => void begin(hand)} />
  }
  return (
    <Screen title={plan.title} foot={<JoinFoot plan={plan} sessions={sessions} onJoin={join} />}>
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

interface JoinFootProps {
  plan: Plan
  sessions: SessionsState
  /** @param known from another part of the plan */
  onJoin: (known?: SessionRun) => void
}

function JoinFoot({ plan, sessions, onJoin }: JoinFootProps) {
  const { open, otherPart } = runsOfPlan(plan, sessions.runs.value, Date.now())
  const before = open ?? otherPart
  if (before === null) {
    return (
      <BigButton tone="amber" meaning="join" onTap={() => onJoin()}>
        {SESSION_JOIN.takePart}
      </BigButton>
    )
  }
  const { done, total } = progressOf(before)
  const goOn = () => {
    if (open === null) onJoin(before)
    else navigate(route('session', open.id))
  }
  return (
    <div class="session-foot-stack">
      <p>
        {open === null
          ? SESSION_JOIN.performedPart(before.testerCode, before.plan.part.number)
          : SESSION_JOIN.standsAt(before.testerCode, done, total)}
      </p>
      <BigButton tone="amber" meaning={`go-on-${before.id}`} onTap={goOn}>
        {open === null ? SESSION_JOIN.goOnAs(before.testerCode) : SESSION_JOIN.goOn}
      </BigButton>
      <Button big wide onClick={() => onJoin()}>
        {SESSION_JOIN.beginAsOther}
      </Button>
    </div>
  )
}

/** What is asked and how long it takes, with the movements to look at. */
function PlanWords({ plan }: { plan: Plan }) {
  const takes = plan.gestures.reduce((sum, gesture) => sum + gesture.takes, 0)
  const all = plan.hand === 'both' ? 2 * takes : takes

  return (
    <>
      <p class="join-lead">
        {SESSION_JOIN.asked(all, aboutMinutes(estimateDurationMs(plan, new Map())), plan.part)}
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
            {SESSION_JOIN.movement(name, takes)}
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
