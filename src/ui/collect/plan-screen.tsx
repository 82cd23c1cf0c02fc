import { useState } from 'preact/hooks'
import type { Plan } from '../../shared/collect/plan'
import { COLLECT_PLANS } from '../../shared/words/en/collect-plans'
import { planText } from '../../shared/words/en/collect-words'
import { aboutMinutes } from '../../shared/words/en/session-words'
import type { CollectState } from '../../state/collect'
import { Button, Figure, goBack, Icon, Notice, route, Screen, Section, useApp } from '../common'
import { Missing } from '../moves/missing'
import { GestureRows } from './gesture-rows'
import { PlanProgress } from './plan-progress'
import { type PlanChange, PlanSettings } from './plan-settings'
import { usePlanDuration } from './use-plan-duration'

const BACK = '#/collect'

/** A plan and how far testers have come with it. What is changed is stored at once. */
export function PlanScreen({ collect, id }: { collect: CollectState; id: string }) {
  const plan = collect.plans.value.find((one) => one.id === id)
  return plan === undefined ? <Missing what="plan" /> : <OnePlan collect={collect} stored={plan} />
}

function OnePlan({ collect, stored }: { collect: CollectState; stored: Plan }) {
  const app = useApp()
  const [plan, setPlan] = useState(stored)
  const [wrong, setWrong] = useState<string | null>(null)
  const durationMs = usePlanDuration(plan)
  const change = (part: PlanChange) => {
    const { folder, ...rest } = { ...plan, ...part }
    const next: Plan = folder === undefined ? rest : { ...rest, folder }
    setPlan(next)
    // A plan without gestures is not stored; the last one with some stays.
    if (next.gestures.length === 0) return
    void collect.savePlan(next).then((done) => setWrong(done.ok ? null : done.message))
  }
  const remove = () => {
    goBack(BACK)
    void collect.removePlan(plan.id)
  }
  const takes = plan.gestures.reduce((sum, one) => sum + one.takes, 0)
  const sessions = (app.library.current.value?.sessions ?? []).some(
    ({ planId }) => planId === plan.id,
  )
  return (
    <Screen
      title={COLLECT_PLANS.plan.title}
      back={BACK}
      aside={
        <Button tone="quiet" label={COLLECT_PLANS.plan.remove} onClick={remove}>
          <Icon name="bin" />
        </Button>
      }
      foot={
        plan.gestures.length > 0 ? (
          <Button tone="amber" big wide href={route('collect', 'code', plan.id)}>
            {COLLECT_PLANS.plan.showCode}
          </Button>
        ) : undefined
      }
    >
      {wrong !== null && (
        <Notice tone="trouble" live>
          {wrong}
        </Notice>
      )}
      <div class="figures">
        <Figure
          label={COLLECT_PLANS.plan.length}
          value={aboutMinutes(durationMs)}
          note={COLLECT_PLANS.plan.estimated}
        />
        <Figure
          label={COLLECT_PLANS.plan.takesEach}
          value={plan.hand === 'both' ? 2 * takes : takes}
          note={planText(plan)}
        />
      </div>
      <Section title={COLLECT_PLANS.plan.gestures}>
        <GestureRows collect={collect} plan={plan} onChange={(gestures) => change({ gestures })} />
      </Section>
      <Section title={COLLECT_PLANS.plan.settings}>
        <PlanSettings collect={collect} plan={plan} onChange={change} />
      </Section>
      {sessions && (
        <Section title={COLLECT_PLANS.plan.missing}>
          <PlanProgress plan={plan} />
        </Section>
      )}
    </Screen>
  )
}
