import { missingTakes } from '../../shared/collect/missing-takes'
import type { Plan } from '../../shared/collect/plan'
import { COLLECT_PLANS } from '../../shared/words/en/collect-plans'
import { planText, progressText } from '../../shared/words/en/collect-words'
import { aboutMinutes } from '../../shared/words/en/session-words'
import { type CollectState, freshPlan } from '../../state/collect'
import {
  Button,
  Card,
  FileButton,
  HOME,
  Icon,
  NextStep,
  route,
  Screen,
  Section,
  useApp,
  wayFromHere,
} from '../common'
import { bringFiles } from './bring-files'
import { FolderSection } from './folder-section'
import { usePlanDuration } from './use-plan-duration'

/** Plans of the library, the ways home, and who has taken part. */
export function Overview({ collect }: { collect: CollectState }) {
  const app = useApp()
  const library = app.library.current.value
  const plans = collect.plans.value
  const latest = plans.at(-1)
  const sessions = library?.sessions ?? []
  const canPlan = library !== null && library.gestures.length > 0
  const add = async () => {
    if (library === null) return
    const lead = wayFromHere()
    const plan = freshPlan(library)
    const saved = await collect.savePlan(plan)
    if (saved.ok) lead(route('collect', 'plan', plan.id))
  }
  return (
    <Screen
      title={COLLECT_PLANS.overview.title}
      back={HOME}
      foot={
        canPlan && plans.length === 0 ? (
          <Button tone="amber" big wide onClick={() => void add()}>
            {COLLECT_PLANS.overview.writePlan}
          </Button>
        ) : latest === undefined ? undefined : (
          <Button tone="amber" big wide href={route('collect', 'code', latest.id)}>
            {COLLECT_PLANS.plan.showCode}
          </Button>
        )
      }
    >
      <p class="quiet">{COLLECT_PLANS.overview.about}</p>
      {!canPlan && (
        <NextStep
          text={COLLECT_PLANS.overview.noGestures}
          action={COLLECT_PLANS.overview.addGesture}
          href="#/moves"
        />
      )}
      {plans.map((plan) => (
        <PlanCard key={plan.id} plan={plan} />
      ))}
      {canPlan && plans.length > 0 && (
        <Button onClick={() => void add()}>
          <Icon name="plus" /> {COLLECT_PLANS.overview.anotherPlan}
        </Button>
      )}
      <Section title={COLLECT_PLANS.overview.bringHome}>
        <FileButton accept=".zip,application/zip" multiple onFiles={(f) => bringFiles(collect, f)}>
          {COLLECT_PLANS.overview.chooseFiles}
        </FileButton>
        <p class="quiet small">{COLLECT_PLANS.overview.bringHint}</p>
        <div class="buttons">
          <Button href="#/collect/camera">{COLLECT_PLANS.overview.byCamera}</Button>
        </div>
      </Section>
      <FolderSection collect={collect} />
      <Section title={COLLECT_PLANS.overview.testers}>
        <p class="quiet">
          {sessions.length === 0
            ? COLLECT_PLANS.overview.noSession
            : COLLECT_PLANS.overview.sessions(sessions.length)}
        </p>
        <div class="buttons">
          <Button href="#/collect/testers">{COLLECT_PLANS.overview.compareTesters}</Button>
        </div>
      </Section>
    </Screen>
  )
}

function PlanCard({ plan }: { plan: Plan }) {
  const app = useApp()
  const durationMs = usePlanDuration(plan)
  const sessions = app.library.current.value?.sessions ?? []
  const progress = missingTakes(plan, sessions, app.library.recordings.value)
  return (
    <Card href={route('collect', 'plan', plan.id)}>
      <h2 class="plan-name">{planText(plan)}</h2>
      <p class="quiet small">
        {COLLECT_PLANS.overview.planFacts(aboutMinutes(durationMs), progressText(progress))}
      </p>
    </Card>
  )
}
