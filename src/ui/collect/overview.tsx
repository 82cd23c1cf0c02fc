import { missingTakes } from '../../shared/collect/missing-takes'
import type { Plan } from '../../shared/collect/plan'
import { planText, progressText } from '../../shared/words/en/collect-words'
import { plural } from '../../shared/words/en/numbers'
import { aboutMinutes } from '../../shared/words/en/session-words'
import { type CollectState, freshPlan } from '../../state/collect'
import {
  Button,
  Card,
  FileButton,
  HOME,
  Icon,
  NextStep,
  navigate,
  route,
  Screen,
  Section,
  useApp,
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
    const plan = freshPlan(library)
    const saved = await collect.savePlan(plan)
    if (saved.ok) navigate(route('collect', 'plan', plan.id))
  }
  return (
    <Screen
      title="Collect from testers"
      back={HOME}
      foot={
        canPlan && plans.length === 0 ? (
          <Button tone="amber" big wide onClick={() => void add()}>
            Write a plan
          </Button>
        ) : latest === undefined ? undefined : (
          <Button tone="amber" big wide href={route('collect', 'code', latest.id)}>
            Show the code
          </Button>
        )
      }
    >
      <p class="quiet">
        A plan says what each tester performs. It becomes a code: scanned with a phone's camera, it
        opens this app with the plan ready. What they record comes home as a file or by camera.
      </p>
      {!canPlan && (
        <NextStep
          text="A plan asks for takes of gestures, and there are none yet."
          action="Add a gesture on Moves"
          href="#/moves"
        />
      )}
      {plans.map((plan) => (
        <PlanCard key={plan.id} plan={plan} />
      ))}
      {canPlan && plans.length > 0 && (
        <Button onClick={() => void add()}>
          <Icon name="plus" /> Another plan
        </Button>
      )}
      <Section title="Bring home">
        <FileButton accept=".zip,application/zip" multiple onFiles={(f) => bringFiles(collect, f)}>
          Choose session files
        </FileButton>
        <p class="quiet small">
          Several at once, sessions or whole libraries. They can also be dropped or pasted here, or
          shared to this app. Nothing is stored before you agree.
        </p>
        <div class="buttons">
          <Button href="#/collect/camera">From another phone by camera</Button>
        </div>
      </Section>
      <FolderSection collect={collect} />
      <Section title="Testers">
        <p class="quiet">
          {sessions.length === 0
            ? 'No session was brought home yet.'
            : `${plural('session', sessions.length)} brought home.`}
        </p>
        <div class="buttons">
          <Button href="#/collect/testers">Compare testers</Button>
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
        {aboutMinutes(durationMs)} a tester, estimated; {progressText(progress)}
      </p>
    </Card>
  )
}
